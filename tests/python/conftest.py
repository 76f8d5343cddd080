"""How many random examples a property is tried with; ``--hypothesis-profile=deep`` tries many more, anew each time."""

from hypothesis import HealthCheck, settings

# A dough with its kitchen is some forty numbers: large for an example, and meant.
LARGE = [HealthCheck.too_slow, HealthCheck.large_base_example, HealthCheck.data_too_large]

settings.register_profile("repeatable", max_examples=100, deadline=None, derandomize=True, suppress_health_check=LARGE)
settings.register_profile(
    "deep", max_examples=5000, deadline=None, derandomize=False, print_blob=True, suppress_health_check=LARGE
)
settings.load_profile("repeatable")
