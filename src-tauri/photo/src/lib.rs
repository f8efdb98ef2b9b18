//! Decode, orient, strip location, scale: bytes in, values out.
