# The step sheet and what is done from it.
back = Back

sheet-no-step = No step is open. Choose one on the thread.
sheet-below = More below
sheet-leave = Leave step
sheet-again = Do it again
sheet-give-up = Enter as I work
sheet-understood = Understood
sheet-try-again = Try again
sheet-trouble = Not done.
sheet-not-yet = Not yet.
sheet-and-more = { $count ->
    [one] And one more.
   *[other] And { $count } more.
}
sheet-why-not = Why not yet
sheet-sign-first = { $count ->
    [one] One signature is missing: sign above.
   *[other] { $count } signatures are missing: sign above.
}
sheet-sign-as = Sign: { $name }
sheet-signed-by = Signed: { $name }
sheet-sign-valid = signed { $time }, { $name }
sheet-sign-lapsed = lapsed; was signed { $time }, { $name }
sheet-nobody-signs = { $role ->
    [second_person] No second person here. Add one in Kit.
    [service_writer] No service writer here. Add one in Kit.
   *[other] No technician here. Add one in Kit.
}
sheet-since = { $time }, { $who }

sheet-main-begin = BEGIN
sheet-main-done = DONE
sheet-main-enter-later = ENTER
sheet-main-put-right = PUT RIGHT
sheet-main-renew = SIGN AGAIN
sheet-main-explain = SAY WHY
sheet-main-go-on = GO ON
sheet-main-go-on-ended = RECORD

sheet-state-undecided = not decided yet
sheet-state-not-in-this-job = not in this job
sheet-state-waiting = waits
sheet-state-open = can begin
sheet-state-in-hand = in hand
sheet-state-done = done
sheet-state-lapsed = lapsed
sheet-state-struck = struck
sheet-state-set-aside = set aside
sheet-state-missed = missed
sheet-mode-later = entered later, in one go
sheet-mode-paper = put right on paper

sheet-stop-title = Stop and call
sheet-stop-explains = The job ends here. The vehicle must be safe to leave, and the service writer is called.
sheet-stop-words =
    Debris found: more than this job
    The customer says no
    A part is missing
    The vehicle is not fit for this lift
sheet-strike-title = Strike { $number }, { $title }
sheet-strike-explains = What was entered here stays readable and no longer counts. Steps that build on it are struck with it.
sheet-strike-words =
    Typed wrong
    Wrong step
    Read again: it was different
    Wrong vehicle
sheet-aside-title = Set { $number } aside, { $title }
sheet-aside-explains = The step is left out of this job with your reason. It is in the record.
sheet-aside-words =
    Not fitted on this vehicle
    Done by somebody else
    The customer does not want it
sheet-missed-title = Missed: { $number }, { $title }
sheet-missed-explains = This step came into the job after its phase had passed. Say why it was not worked.
sheet-missed-words =
    Not needed after what was found
    Looked at while doing another step
    Could not be reached any more
