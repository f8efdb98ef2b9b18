# The frame: vehicle line, thread, tray, clock, moves.
frame-under = under
frame-damaged = Problems were found in the job data. They stand on the Bay screen, with what to do.
frame-demo = demo values, not for a vehicle
frame-opens-moves = Opens the moves.
# Follows the value of what is known and ages.
frame-good-for = good { $minutes } min
frame-more-dangers = { $count ->
    [one] and 1 more danger
   *[other] and { $count } more dangers
}

frame-signal-danger = DANGER
frame-signal-warning = WARNING
frame-signal-caution = CAUTION
frame-signal-notice = NOTICE

frame-lane-floor = floor
frame-lane-bench = bench
frame-lane-up = up
# The thread is for the eye; this is what is read out of it.
frame-thread-says = Thread: { $done } of { $all } steps done. Looking at step { $number }, { $title }. Opens all steps.
frame-thread-title = Thread
frame-phase-minutes = expected { $expected }, worked { $worked }
frame-minutes = { $minutes } min
frame-none-open = No step can begin now. A move, or what you are waiting for, opens the next.
frame-show-open = Only what is open now:
frame-on = on
frame-off = off

frame-tray = tray
frame-tray-explains = what is off the vehicle
frame-tray-empty = Nothing is off the vehicle.
frame-tray-more = and { $count } more { $count ->
    [one] kind
   *[other] kinds
}
frame-tray-opens = Opens the tray.
frame-tray-title = Off the vehicle now
frame-tray-disagrees = count again
frame-tray-disagrees-long = A count made anew from what was entered comes to another number. Count the pieces.
frame-off-of = { $off } of { $count }
frame-new-goes-in = new goes in
frame-reuse-once = goes back once
frame-group-back = These go back
frame-group-new = These do not go back: new go in

frame-clock = on this job
frame-in-steps = in steps { $time }
frame-timer-left = step { $number }: { $time }
frame-timer-over = step { $number }: time is over
# $what: name of a timer; $number: of its step. Told once.
frame-timer-told = Step { $number }, { $what }: the time is over.
frame-fresh-left = { $what }: good { $minutes } min
frame-let-pass = let { $minutes } min pass
frame-demo-clock = demo clock
frame-to-timer = Shows the step.

frame-moves-title = Moves
frame-moves-now = How the vehicle is entered now
frame-moves-lapses = lapses: { $what }
frame-moves-forgets = no longer known: { $what }
frame-moves-nothing = nothing lapses
frame-moves-not-now = Not possible now
frame-moves-entered = Entered: { $move }.
frame-moves-renew = Sign again
frame-moves-observe = The vehicle is not as shown

frame-who-role = { $role ->
    [second_person] second person
    [service_writer] service writer
   *[other] technician
}
frame-who-nobody = nobody
frame-who-opens = Who works now
frame-more = More
frame-wipe = Wipe
frame-wipe-explains = Freezes touch for { $seconds } seconds.
frame-wipe-now = Touch is frozen. Wipe the glass.
frame-wipe-frozen = Touch and keys are frozen for { $seconds } seconds. It ends by itself.
frame-wipe-over = Touch works again.
