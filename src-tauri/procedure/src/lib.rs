//! Checklist format, the Machine, proof: pure.
