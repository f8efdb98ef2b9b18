# What can be wrong with an event, a line or a chain of the journal.

# $event: id of the event; $field: the header field
journal-number = Event { $event }: its { $field } is beyond 9007199254740991 and would not be read back exactly.
# $event: id of the event
journal-id = Event { $event }: a new event needs an id of UUID version 7.
# $event: id of the event
journal-empty = Event { $event }: its kind is empty.
# $event: id of the event
journal-body = Event { $event }: its body is not one JSON value on one line.
# $event: id of the event
journal-unwritable = Event { $event }: it could not be written as JSON.
journal-line = A line of the journal cannot be read as an event.
# $event: id of the event
journal-spelling = Event { $event }: its line was respelt after it was written.
# $text: the text
journal-hash-text = "{ $text }" is not a hash: 64 lower-case hex digits are needed.
# $event: id of the event; $found: its format
journal-format-unknown = Event { $event } is of format { $found }, which this version cannot read. A newer version may.
# $event: id of the event
journal-body-altered = Event { $event }: its body was altered after it was written.
# $event: id of the event; $kept: the hash kept beside the event; $found: the hash its header gives
journal-hash-differs = Event { $event }: its header was altered after it was written (kept hash { $kept }, found { $found }).
# $event: id of the event; $found: the number it has; $chain: device or subject; $expected: the number that belongs here
journal-sequence-gap = Event { $event } has number { $found } in the { $chain ->
    [subject] subject's
   *[device] device's
} chain where number { $expected } belongs.
# $event: id of the event; $chain: device or subject; $named: the hash it names; $found: the hash of the event that stands before it
journal-previous-differs = Event { $event } does not follow the event before it in the { $chain ->
    [subject] subject's
   *[device] device's
} chain (it names { $named }, there is { $found }).
# $event: id of the event; $found: the event's device; $expected: the chain's device
journal-other-device = Event { $event } was written by device { $found } and stands in the chain of device { $expected }.
# $event: id of the event; $found: what the event is about; $expected: what the chain is about
journal-other-subject = Event { $event } is about { $found } and stands in the chain about { $expected }.
# $event: id of the event
journal-shop-of-other = Event { $event } is about the shop and stands among the shop events of another device.
# $text: the text
journal-no-subject = "{ $text }" names neither a job nor a shop: job:UUID or shop:UUID is needed.
