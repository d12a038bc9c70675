//! A customer's link: pasted, or read by the camera where the browser itself can read codes.

use crate::need::counter::Act;
use crate::need::link;
use crate::t;
use crate::web::components::own::OwnField;
use crate::web::platform::{self, Camera, CameraFault};
use crate::web::state::{Action, use_app};
use crate::web::view::prelude::*;
use crate::wording::problems;

/// What the sheet tells.
#[derive(Properties, PartialEq)]
pub struct Props {
    /// Called when a link was opened.
    pub onopened: Callback<()>,
}

/// Where a customer's link is opened.
#[component]
pub fn OpenLink(props: &Props) -> Html {
    let text = use_state_eq(String::new);
    let problem = use_state_eq(|| None::<String>);
    let camera = use_mut_ref(|| None::<Camera>);
    let looks = use_state_eq(|| false);
    let video = use_node_ref();
    let app = use_app();
    {
        // The camera goes off with the sheet.
        let camera = camera.clone();
        use_effect_with((), move |()| move || drop(camera.take()));
    }
    let Some(app) = app else {
        return Html::default();
    };
    let open = {
        let (app, problem, onopened) = (app.clone(), problem.clone(), props.onopened.clone());
        Callback::from(move |text: String| match link::decode(&text) {
            Ok(rescued) => {
                problem.set(None);
                app.dispatch(Action::At(Act::Open(Box::new(rescued.answers))));
                onopened.emit(());
            }
            Err(why) => problem.set(Some(problems::link(&why))),
        })
    };
    let take = {
        let (open, text) = (open.clone(), text.clone());
        Callback::from(move |_: MouseEvent| open.emit((*text).clone()))
    };
    let ontext = {
        let (text, problem) = (text.clone(), problem.clone());
        Callback::from(move |typed: String| {
            problem.set(None);
            text.set(typed);
        })
    };
    let look = {
        let (camera, looks, problem, video) = (
            camera.clone(),
            looks.clone(),
            problem.clone(),
            video.clone(),
        );
        Callback::from(move |_: MouseEvent| {
            let Some(element) = video.cast::<web_sys::HtmlElement>() else {
                return;
            };
            let found = {
                let (open, looks, camera) = (open.clone(), looks.clone(), camera.clone());
                move |text: String| {
                    drop(camera.take());
                    looks.set(false);
                    open.emit(text);
                }
            };
            let failed = {
                let (problem, looks) = (problem.clone(), looks.clone());
                move |fault| {
                    looks.set(false);
                    problem.set(Some(match fault {
                        CameraFault::CannotRead => t!("counter-camera-cannot"),
                        CameraFault::Denied => t!("counter-camera-denied"),
                    }));
                }
            };
            looks.set(true);
            *camera.borrow_mut() = Camera::look(&element, found, failed);
        })
    };
    html! {
        <div class="counter__link">
            <h2>{ t!("counter-link") }</h2>
            <p>{ t!("counter-link-lead") }</p>
            <OwnField id="counter-link" label={t!("share-label")} long=true text={(*text).clone()} {ontext}
                wrong={(*problem).clone().map(AttrValue::from)} />
            <div class="counter__ways">
                <button type="button" class="button button--primary" onclick={take}>{ t!("counter-link-open") }</button>
                if platform::can_read_codes() {
                    <button type="button" class="button" onclick={look}>{ t!("counter-camera") }</button>
                }
            </div>
            if !platform::can_read_codes() {
                <p class="soft">{ t!("counter-camera-cannot") }</p>
            }
            <video ref={video} class="counter__video" hidden={!*looks} muted=true playsinline=true aria-label={t!("counter-camera-view")}></video>
        </div>
    }
}
