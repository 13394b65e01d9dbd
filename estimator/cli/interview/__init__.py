"""The interview of `estimator start`: answers typed in, a job file and its logs out, saved after each answer."""
