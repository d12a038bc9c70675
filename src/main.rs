//! Mounts the page, or answers the page's jobs where this is its worker.

fn main() {
    scopewright::web::start();
}
