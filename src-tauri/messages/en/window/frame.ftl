# The frame: vehicle line, job steps, tray, clock, vehicle actions.
frame-under = under vehicle
frame-damaged = Problems were found in the job data. The Bay screen says what to do.
frame-demo = demo values, not for a vehicle
frame-opens-vehicle-actions = Opens vehicle actions.
# Follows the value of what is known and ages.
frame-good-for = { $minutes } min left
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
# The line of job steps is for the eye; this is what is read out of it.
frame-job-steps-says = Job steps: { $done } of { $all } steps done. Looking at step { $number }, { $title }. Opens all steps.
frame-job-steps-title = Job steps
frame-phase-minutes = expected { $expected }, worked { $worked }
# A phase whose steps are all done, in one row.
frame-phase-done = { $count ->
    [one] 1 step done, worked { $worked }
   *[other] { $count } steps done, worked { $worked }
}
frame-minutes = { $minutes } min
frame-none-open = No step can begin now. A vehicle action, or the end of a wait, opens the next one.
frame-show-open = Open steps only:
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
frame-tray-disagrees = recount
frame-tray-disagrees-long = The entries add up to a different number. Count the parts.
frame-off-of = { $off } of { $count }
frame-new-goes-in = install new
frame-reuse-once = reuse once
frame-group-back = Refit these
frame-group-new = Replace these with new ones

frame-clock = on this job
frame-in-steps = in steps { $time }
frame-timer-left = step { $number }: { $time }
frame-timer-over = step { $number }: time is up
# $what: name of a timer; $number: of its step. Told once.
frame-timer-told = Step { $number }, { $what }: time is up.
# $text: what a meter, a wrench or a scanner typed. Said in one line.
frame-came-nowhere = "{ $text }" came in, but no entry that takes a number is open. Nothing was entered.
frame-came-no-number = "{ $text }" came in and is not a number. It stands as a draft: clear it, or measure again.
# $unit: the unit that was sent; $units: those that the open entry takes
frame-came-unit = This takes { $units }, not "{ $unit }". The number stays as a draft: correct it, or measure again.
frame-came-unit-none = This takes no unit, and "{ $unit }" came with it. The number stays as a draft: correct it, or measure again.
frame-fresh-left = { $what } counts for { $minutes } min
frame-let-pass = add { $minutes } min
frame-demo-clock = demo clock
frame-to-timer = Shows the step.

frame-vehicle-actions-title = Vehicle actions
frame-vehicle-actions-now = Vehicle status now
frame-vehicle-actions-lapses = must be signed again: { $what }
frame-vehicle-actions-forgets = must be checked again: { $what }
frame-vehicle-actions-nothing = nothing to sign or check again
frame-vehicle-actions-not-now = Not possible now
frame-vehicle-actions-entered = Entered: { $action }.
frame-vehicle-actions-renew = Sign again
frame-vehicle-actions-observe = Correct the vehicle status

frame-who-role = { $role ->
    [second_person] second person
    [service_writer] service writer
   *[other] technician
}
frame-who-nobody = no one
frame-who-opens = Who is working now
frame-more = More
frame-wipe = Clean screen
frame-wipe-explains = Turns touch off for { $seconds } seconds.
frame-wipe-now = Touch is off. Clean the screen.
frame-wipe-frozen = Touch and keys are off for { $seconds } seconds. They come back on by themselves.
frame-wipe-over = Touch is on again.
