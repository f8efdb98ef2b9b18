# The order with the least expected time, and what can be done while something is waited for.
plan-order = Least time
plan-looking = Looking for an order.
plan-total = { $time } from now to the end.
plan-exact = No order takes less.
plan-gap = It may be { $minutes } min longer than the best.
plan-searching = The best one is being looked for.
plan-start = Start: { $title }
plan-wait = { $idle ->
    [0] Waiting for { $what }, until { $until }, with other work meanwhile.
   *[other] Waiting for { $what }, until { $until }: { $idle } min of it with nothing to do.
}
plan-watch = Waiting for { $what }, until { $until }: somebody stays and watches.
plan-meanwhile = What can be done meanwhile
plan-running = Waiting for { $what }: about { $minutes } min. Meanwhile:
plan-nothing = Nothing else can be done now.
plan-no-time = costs no time
plan-longer = { $minutes } min longer
plan-longer-about = about { $minutes } min longer
plan-no-way = no way to the end from there
