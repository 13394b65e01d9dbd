"""A whole house as somebody types it: every question in its order. The house is invented."""

ANSWERS: tuple[str, ...] = (
    # the job
    "", "11/16", "Ines Calloway", "both",
    # the customer
    "Wren Castellane", "417 Larkspur Court, Fernbrook", "555-0147", "",
    # the house
    "1962", "slab", "", "4", "6 in", "24in deep 12in wide", "firm clay", "y", "demo", "", "yes", "2 baths, kitchen, washer", "copper", "nothing", "tile", "14",
    # a trial, for the place is invented
    "",
    # the site
    "42in", "35", "y", "n", "Teo Marlow",
    # line 1
    "main", "", "ci", "",
    "pass front cleanout to house, riser 26in",
    "2.2 yard lawn",
    "5.3 slab tile",
    "5.3 room entry",
    "5.3 invert 30in below slab",
    "7-30 scl 35% drags",
    "14.4 wye 3in left live proven called hall bath",
    "16-24 grv sharp",
    "18.6 hole 3in soil seen at 5-7",
    "18.6 loc 25.5in under tile, 12’9” front wall, flag A",
    "23 room kitchen",
    "42.6 end closet bend",
    "done",
    "city main",
    # line 2
    "hall bath", "3", "pvc", "n", "12 ft", "hall bath",
    "",
    # water tests
    "under slab", "whole", "all", "before lift", "", "front cleanout, house side", "4, 4, 2", "5:3/8, 10:7/8, 20:1 5/8", "", "failed",
    "",
    # seen off the camera
    "wet lawn", "front yard", "",
    # ways round
    "hall: wall 12, yard 26, fall 6.6in", "main 6 to 9", "main at 3", "1 bath", "",
    # lifting
    "planned 2027-01", "Fernbrook Lifting (invented)", "14",
    # insurance
    "Fernbrook Mutual (invented)", "", "C-77",
    # what they want
    "yes", "slow hall bath, and a test before the lift", "",
)  # fmt: skip
