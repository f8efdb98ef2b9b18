"""The least time for invented jobs by OR-Tools' CP-SAT, for `tests/plan`.

Each job is modelled from its own terms: people, zones with a walk between two of them, steps in order, a lift that goes up
once and down once, something that cures, drains or is watched. Nothing here knows how the planner searches.
"""

import json
import sys

from ortools.sat.python import cp_model


def wait_of(step):
    """Kind of a wait and its fields."""
    wait = step["wait"]
    return (wait, {}) if isinstance(wait, str) else next(iter(wait.items()))


class Job:
    """One job as a model: visits of people to zones, and the two vehicle actions of the lift."""

    def __init__(self, job):
        self.job = job
        self.model = cp_model.CpModel()
        steps = job["steps"]
        lags = sum(wait_of(step)[1].get("minutes", 0) for step in steps)
        walks = 2 * job["walk"] * (len(steps) + 4)
        self.horizon = sum(step["minutes"] for step in steps) + lags + walks + job["raise"] + job["lower"]
        # Nodes of the people's ways: (start, minutes, zone or nothing for a vehicle action).
        self.nodes = []
        self.first = [self.visit(self.hands(step), step["zone"]) for step in steps]
        self.last = [self.close(at) for at in range(len(steps))]
        self.end = self.model.new_int_var(0, self.horizon, "end")
        self.order()
        self.lift()
        self.ways()
        for start, minutes, _ in self.nodes:
            self.model.add(self.end >= start + minutes)
        self.model.minimize(self.end)

    @staticmethod
    def hands(step):
        kind, wait = wait_of(step)
        return step["minutes"] + (wait["minutes"] if kind == "watched" else 0)

    def visit(self, minutes, zone):
        start = self.model.new_int_var(0, self.horizon, "")
        self.nodes.append((start, minutes, zone))
        return len(self.nodes) - 1

    def start_of(self, node):
        return self.nodes[node][0]

    def end_of(self, node):
        return self.nodes[node][0] + self.nodes[node][1]

    def close(self, at):
        """The visit at which a step is done: its own, or a later one of no length when it has drained."""
        step = self.job["steps"][at]
        kind, wait = wait_of(step)
        if kind != "drains":
            return self.first[at]
        node = self.visit(0, step["zone"])
        self.model.add(self.start_of(node) >= self.end_of(self.first[at]) + wait["minutes"])
        return node

    def order(self):
        for at, step in enumerate(self.job["steps"]):
            for before in step["after"]:
                self.model.add(self.start_of(self.first[at]) >= self.end_of(self.last[before]))
            kind, wait = wait_of(step)
            if kind == "cures":
                ready = self.end_of(self.last[wait["after"]]) + wait["minutes"]
                self.model.add(self.start_of(self.first[at]) >= ready)

    def lift(self):
        lifts = [step["lift"] for step in self.job["steps"]]
        if "up" not in lifts and "back" not in lifts:
            return
        up = self.visit(self.job["raise"], None)
        # A job in which the lift went up is over only when it is down again.
        down = self.visit(self.job["lower"], None)
        self.model.add(self.start_of(down) >= self.end_of(up))
        for first, last, where in zip(self.first, self.last, lifts):
            if where == "floor":
                self.model.add(self.end_of(last) <= self.start_of(up))
            elif where == "up":
                self.model.add(self.start_of(first) >= self.end_of(up))
                self.model.add(self.end_of(last) <= self.start_of(down))
            elif where == "back":
                self.model.add(self.start_of(first) >= self.end_of(down))
            else:
                # Nobody goes into a step while the lift moves.
                for node in {first, last}:
                    for action in (up, down):
                        before = self.model.new_bool_var("")
                        self.model.add(self.start_of(node) <= self.start_of(action)).only_enforce_if(before)
                        self.model.add(self.start_of(node) >= self.end_of(action)).only_enforce_if(~before)

    def ways(self):
        """Each node is on the way of one person, who walks between zones. Where somebody is first costs nothing."""
        people, count = self.job["people"], len(self.nodes)
        model, walk = self.model, self.job["walk"]
        zones = []
        for _, _, zone in self.nodes:
            zones.append(model.new_int_var(0, 4, "") if zone is None else zone)
        on = [[model.new_bool_var("") for _ in range(count)] for _ in range(people)]
        for node in range(count):
            model.add_exactly_one(on[person][node] for person in range(people))
        for person in range(people):
            idle = model.new_bool_var("")
            arcs = [(0, 0, idle)]
            for node in range(count):
                arcs.append((node + 1, node + 1, ~on[person][node]))
                begins = model.new_bool_var("")
                arcs.append((0, node + 1, begins))
                arcs.append((node + 1, 0, model.new_bool_var("")))
                if self.nodes[node][2] is None:
                    model.add(zones[node] == 0).only_enforce_if(begins)
                for other in range(count):
                    if other != node:
                        arcs.append((node + 1, other + 1, self.follows(node, other, zones, walk)))
            model.add_circuit(arcs)

    def follows(self, node, other, zones, walk):
        """Whether a person goes from one node to the other next."""
        model = self.model
        arc = model.new_bool_var("")
        way = 0
        if self.nodes[other][2] is None:
            model.add(zones[other] == zones[node]).only_enforce_if(arc)
        elif self.nodes[node][2] is not None:
            way = walk if zones[node] != zones[other] else 0
        else:
            here = model.new_bool_var("")
            domain = cp_model.Domain.from_values([0, zones[other]])
            model.add_linear_expression_in_domain(zones[node], domain).only_enforce_if(here)
            way = walk - walk * here
        model.add(self.start_of(other) >= self.end_of(node) + way).only_enforce_if(arc)
        return arc

    def solve(self, seconds):
        solver = cp_model.CpSolver()
        solver.parameters.max_time_in_seconds = seconds
        solver.parameters.num_workers = 2
        status = solver.solve(self.model)
        proved = status == cp_model.OPTIMAL
        found = status in (cp_model.OPTIMAL, cp_model.FEASIBLE)
        return {
            "proved": proved,
            "infeasible": status == cp_model.INFEASIBLE,
            "minutes": round(solver.objective_value) if found else None,
        }


def main():
    asked = json.load(sys.stdin)
    answers = [Job(job).solve(asked["seconds"]) for job in asked["jobs"]]
    json.dump(answers, sys.stdout)


if __name__ == "__main__":
    main()
