//! Mounts the page.

fn main() {
    scopewright::web::mount();
}
