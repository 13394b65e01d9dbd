"""Every noun of the job, as frozen records; lengths, money, problems. Imports nothing of the project."""
