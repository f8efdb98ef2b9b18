# How several things are said one after the other: `start` is what was said so far.
list-next = { $start }, { $next }
list-and = { $start } and { $last }
list-or = { $start } or { $last }
