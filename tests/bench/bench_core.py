"""How fast the core is: designs a second, the load curve, comparison, computed changes: ``python -m tests.bench.bench_core``.

Times are medians of rounds on one core; the goals are those of the project: at least 2000 designs a second from a
validated document without the curve, the curve in at most 10 ms.
"""

import time
from collections.abc import Callable
from statistics import median

from geometry.comparison import compare_materials
from geometry.conditions import conditions_of, vehicle_of
from geometry.design import design_pad
from geometry.measurements import read_measurements
from geometry.remedies import remedies_for_check
from geometry.sensitivity import sensitivities
from geometry.statics import lift_curve
from tests.documents import sample, van

ROUNDS = 7


def seconds(work: Callable[[], object], times: int) -> float:
    """Median time of one call."""
    rounds = []
    for _ in range(ROUNDS):
        started = time.perf_counter()
        for _ in range(times):
            work()
        rounds.append((time.perf_counter() - started) / times)
    return median(rounds)


def figures() -> dict[str, str]:
    """Each figure with its value, ready to print."""
    plain, statics = read_measurements(van()), read_measurements(sample("mobile_library_van"))
    failing = design_pad(read_measurements(sample("repair_cafe_people_carrier")))
    design = design_pad(statics)
    vehicle = vehicle_of(statics.car)
    return {
        "designs a second, sized and judged (goal 2000)": f"{1 / seconds(lambda: design_pad(plain), 200):.0f}",
        "design document with all words": f"{1e3 * seconds(lambda: design_pad(plain).to_dict(), 50):.2f} ms",
        "reading and resolving a document": f"{1e3 * seconds(lambda: conditions_of(read_measurements(van())), 200):.2f} ms",
        "load curve (goal 10 ms)": f"{1e3 * seconds(lambda: lift_curve(vehicle, lift_needed_mm=150), 100):.2f} ms",
        "all materials compared (goal 100 ms)": f"{1e3 * seconds(lambda: compare_materials(statics), 5):.1f} ms",
        "sensitivity": f"{1e3 * seconds(lambda: sensitivities(design), 10):.1f} ms",
        "computed changes of a failing pad": f"{1e3 * seconds(lambda: remedies_for_check(failing, failing.failures[0]), 3):.1f} ms",
    }


if __name__ == "__main__":
    for name, value in figures().items():
        print(f"{name:55} {value:>10}")
