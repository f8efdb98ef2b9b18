//! Event envelope, canonical bytes, hash chains, verifying: pure.
