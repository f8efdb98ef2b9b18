//! A crate's list of messages.

/// Declares the messages of a crate, so that none can be made that is not on the list or lacks an argument: a row is the
/// function that makes it, its id, the names of its arguments. `MESSAGES` has every id with the names of its arguments.
/// Messages that are chosen by an id of the data have no function: their ids stand before the rows, after `labels:`.
///
/// ```
/// panside_messages::messages! {
///     drained "drained" (volume);
/// }
/// assert_eq!(drained("3.3 L").id, "drained");
/// assert_eq!(MESSAGES, &[("drained", &["volume"] as &[&str])]);
/// ```
#[macro_export]
macro_rules! messages {
    (labels: $($label:literal)+; $($name:ident $id:literal ($($arg:ident),* $(,)?);)+) => {
        /// The messages that are chosen by an id of the data, such as a class: what it is called.
        pub const LABELS: &[&str] = &[$($label),+];

        $crate::messages! { with $($label)+; $($name $id ($($arg),*);)+ }
    };
    ($($name:ident $id:literal ($($arg:ident),* $(,)?);)+) => {
        $crate::messages! { with ; $($name $id ($($arg),*);)+ }
    };
    (with $($label:literal)*; $($name:ident $id:literal ($($arg:ident),*);)+) => {
        /// Every message id with the names of its arguments.
        pub const MESSAGES: &[(&str, &[&str])] =
            &[$(($id, &[$(stringify!($arg)),*]),)+ $(($label, &[]),)*];

        $(
            #[doc = concat!("The message `", $id, "`.")]
            pub(crate) fn $name($($arg: impl Into<$crate::Arg>),*) -> $crate::Message {
                $crate::Message::new($id, [$((stringify!($arg), $arg.into())),*])
            }
        )+
    };
}
