//! The table of commands: what a row becomes.

/// Every answer is cleaned for showing on its way ([`crate::shown`]).
///
/// Turns rows `name(argument: Type, …) -> Answer { |desk| … }` into Tauri commands, and declares them for the page.
/// The commands named after `raw:` carry bytes and are written by hand; they are registered with the others.
macro_rules! commands {
    (
        raw: $($raw:ident),*;
        $( $(#[doc = $doc:literal])* $name:ident($($arg:ident: $ty:ty),*) -> $answer:ty { |$desk:ident| $body:expr } )*
    ) => {
        $(
            $(#[doc = $doc])*
            #[allow(clippy::too_many_arguments, reason = "the page names every argument")]
            #[tauri::command]
            pub async fn $name($($arg: $ty,)* $desk: tauri::State<'_, Desk>) -> Result<Shown<$answer>, Trouble> {
                let answer: Result<$answer, Trouble> = $body;
                answer.map(Shown)
            }
        )*

        /// Registers every command.
        pub fn handler() -> impl Fn(tauri::ipc::Invoke) -> bool + Send + Sync + 'static {
            tauri::generate_handler![$($name,)* $($raw),*]
        }

        /// Every command with its types, for the page.
        pub fn declared() -> Vec<$crate::types::Declared> {
            vec![$(
                $crate::types::Declared::new::<$answer>(stringify!($name), &[$($doc),*])
                    $(.takes::<$ty>(stringify!($arg)))*
            ),*]
        }

        /// Commands whose arguments or answers are bytes.
        pub const RAW: &[&str] = &[$(stringify!($raw)),*];
    };
}
pub(crate) use commands;
