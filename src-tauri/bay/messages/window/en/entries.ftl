# Entries and the keypad.
