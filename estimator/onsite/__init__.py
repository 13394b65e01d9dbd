"""What is worked out between the camera and the shovel, from notes that are there already: tests, water, levels, marks."""
