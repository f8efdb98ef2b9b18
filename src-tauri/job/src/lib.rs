//! What happened on one job: events, classify, decide, fold, views: pure.
