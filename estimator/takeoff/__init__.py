"""Step 4: a repair in, its quantities out, each with its formula and inputs."""
