# The sequence with the least expected time, and what can be done while something is waited for.
plan-order = Fastest sequence:
plan-looking = Working it out.
plan-total = { $time } from now to the end.
plan-exact = No sequence is faster.
plan-gap = May be { $minutes } min longer than the fastest.
plan-searching = Still working it out: { $percent } % done.
plan-people = Plan for
plan-people-1 = One person
plan-people-2 = Two people
plan-person = person { $person }
# $alone, $second: how long it takes; known only for a good order where they are "most".
plan-second = { $alone_is ->
    [exact] { $alone } alone
   *[most] At most { $alone } alone
}, { $second_is ->
    [exact] { $second } with a second person.
   *[most] at most { $second } with a second person.
}
plan-no-alone = Alone: { $why }
plan-no-second = With a second person: { $why }
plan-only = Plan only: this checklist allows one person in a step at a time.
plan-start = Start: { $title }
plan-wait = { $idle ->
    [0] Waiting for { $what }, until { $until }, with other work meanwhile.
   *[other] Waiting for { $what }, until { $until }: { $idle } min of it idle.
}
plan-watch = Waiting for { $what }, until { $until }: someone stays and watches.
plan-meanwhile = What can be done meanwhile
plan-running = Waiting for { $what }: about { $minutes } min. Meanwhile:
plan-nothing = Nothing else can be done now.
plan-no-time = takes no extra time
plan-longer = { $minutes } min longer
plan-longer-about = about { $minutes } min longer
plan-no-way = the job can't be finished from there
