//! The finished record: the document a service writer gets.
