"""Ratios of the times of colony_step.sh, and whether the mean courses of NumPy and R are that of C++. Courses are means
over 1,024 members, each side with luck of its own: they agree where they stay within five standard errors of their
difference, or within a thousandth of the largest value, which is what single precision may lose in a year."""
import csv
import sys

folder = sys.argv[1]
times = {}
for line in open(folder + "/times.txt"):
    name, ns = line.split()
    times[name] = min(float(ns), times.get(name, 1e30))
for other in ("plain", "numpy", "r"):
    print(f"{other} takes {times[other] / times['best']:.1f} times as long as C++ at its widest")


def course(name):
    with open(f"{folder}/{name}.csv") as file:
        return [{k: float(v) for k, v in row.items()} for row in csv.DictReader(file)]


ours = course("course")
same = True
for name in ("course_numpy", "course_r"):
    theirs = course(name)
    for quantity in [key for key in theirs[0] if key + "_se" in theirs[0]]:
        largest = max(row[quantity] for row in ours)
        worst, apart, on_day = 0.0, 0.0, 0
        for a, b in zip(ours, theirs):
            by = abs(a[quantity] - b[quantity])
            apart = max(apart, by)
            allowed = max(5 * (a[quantity + "_se"] ** 2 + b[quantity + "_se"] ** 2) ** 0.5, 0.001 * largest)
            if by > worst * allowed:
                worst, on_day = by / allowed, int(a["day"])
        print(f"{name:13} {quantity:14} at most {100 * apart / max(largest, 1e-9):5.2f} % of the largest value apart, "
              f"{worst:.2f} of what luck allows (day {on_day})")
        same = same and worst < 1
print("the courses agree" if same else "THE COURSES DIFFER")
sys.exit(0 if same else 1)
