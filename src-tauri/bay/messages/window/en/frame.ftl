# The frame: vehicle line, thread, tray, clock, moves.
