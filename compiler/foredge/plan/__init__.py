"""The plan over all stages: stock, cutting, cost, schedule, moisture, rules."""
