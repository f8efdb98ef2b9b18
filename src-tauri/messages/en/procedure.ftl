# Why there is no plan, and how far a proof is.

## Why there is no plan

procedure-plan-over = The job has ended; there is nothing left to plan.
# $most: the most people
procedure-plan-people = A plan is made for 1 or { $most } people, and for no more than can be in steps at a time.
# $people: how many were asked for; $problems: each on a line of its own, told by the loader
procedure-plan-crew = This checklist can't be planned for { $people } people:{ $problems }
procedure-plan-no-way = No allowed order leads from here to the end, if each entry turns out as planned for. Prove the checklist, or plan for another answer.
# $moments: how many were looked at
procedure-plan-not-found = No order to the end was found within { $moments } moments. Give the search a larger budget.
procedure-plan-cancelled = The search was ended before it found an order.

## How far a proof is

# $runs: procedure-runs-*; $doing: procedure-looking-*
procedure-progress = { $runs }: { $doing }
procedure-runs-plain = plain runs
procedure-runs-one-void = runs with at most one void
procedure-runs-one-observation = runs with at most one observation
procedure-looking-searching = searching
procedure-looking-safe-to-leave = looking for ways to make it safe to leave
procedure-looking-end = looking for ways to the end
procedure-looking-safe-stop = looking for ways to a safe stop
