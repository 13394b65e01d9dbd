"""Files and folders on the disk: written whole or not at all, under names nobody else has; what a killed run left is swept."""
