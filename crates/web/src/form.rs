//! Forms as they come, their token checked, and what was wrong with them.

use crate::app::App;
use crate::error::Error;
use crate::text;
use crate::token;
use axum::extract::{Form, FromRequest, Request};
use std::collections::BTreeMap;

/// The fields of a form that carries this process's token. The only way to read a form.
pub(crate) struct Signed(Vec<(String, String)>);

impl Signed {
    /// A field's text without white space around it; empty where it is missing.
    pub(crate) fn text(&self, name: &str) -> String {
        self.find(name).unwrap_or("").trim().to_owned()
    }

    /// Whether a box was ticked or a button pressed.
    pub(crate) fn has(&self, name: &str) -> bool {
        self.find(name).is_some()
    }

    /// Every field with its text; of fields of one name the first.
    pub(crate) fn fields(&self) -> BTreeMap<String, String> {
        let names = self.0.iter().map(|(name, _)| name);
        names.map(|name| (name.clone(), self.text(name))).collect()
    }

    fn find(&self, name: &str) -> Option<&str> {
        self.0
            .iter()
            .find(|(key, _)| key == name)
            .map(|(_, value)| value.as_str())
    }
}

impl FromRequest<App> for Signed {
    type Rejection = Error;

    async fn from_request(request: Request, app: &App) -> Result<Self, Error> {
        let Form(fields) = Form::<Vec<(String, String)>>::from_request(request, app)
            .await
            .map_err(|error| Error::Malformed(text::form::the_form_cant_be_read(&error)))?;
        let signed = Self(fields);
        if !app.token.is(signed.find(token::FIELD).unwrap_or("")) {
            return Err(Error::Stale);
        }
        Ok(signed)
    }
}

/// What is wrong with a form, field by field.
#[derive(Default)]
pub(crate) struct Problems(Vec<(String, String)>);

impl Problems {
    pub(crate) fn add(&mut self, field: impl Into<String>, message: impl Into<String>) {
        self.0.push((field.into(), message.into()));
    }

    pub(crate) fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The message at a field, if there is one.
    pub(crate) fn at(&self, field: &str) -> Option<&str> {
        self.0
            .iter()
            .find(|(name, _)| name == field)
            .map(|(_, message)| message.as_str())
    }

    /// Every field with its message, in the order found.
    pub(crate) fn all(&self) -> &[(String, String)] {
        &self.0
    }
}
