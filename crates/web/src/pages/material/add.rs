//! `POST /materials`: puts a material on the shelf, with its first lot if an amount was typed.

use super::list::{Draft, LotDraft, render};
use crate::app::{App, now};
use crate::error::Error;
use crate::form::{Problems, Signed};
use crate::pages::recipe::places::sentence;
use crate::text;
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use dyeing::{Kitchen, stock};
use store::{MaterialKind, NewLot, NewMaterial, StoreError};

pub(crate) async fn act(State(app): State<App>, form: Signed) -> Result<Response, Error> {
    let draft = Draft {
        kind: form.text("kind"),
        name: form.text("name"),
        notes: form.text("notes"),
        lot: LotDraft::typed(&form),
    };
    let mut problems = Problems::default();
    let kind = MaterialKind::of_key(&draft.kind).unwrap_or(MaterialKind::Dye);
    let lot = if draft.lot.is_blank() {
        None
    } else {
        draft.lot.read(&mut problems)
    };
    if !problems.is_empty() {
        return refused(&app, &draft, &problems).await;
    }
    let new = NewMaterial {
        kind,
        name: draft.name.clone(),
        notes: draft.notes.clone(),
    };
    let done = app
        .at_bench(move |bench| match bench.add_material(&new, &now()) {
            Ok(id) => {
                if let Some(lot) = lot {
                    bench.add_lot(id, &lot, &now())?;
                }
                Ok(Ok(id))
            }
            Err(StoreError::Input { field, message }) => Ok(Err((field, message))),
            Err(error) => Err(error.into()),
        })
        .await?;
    match done {
        Ok(id) => Ok(Redirect::to(&format!("/materials/{id}")).into_response()),
        Err((field, message)) => {
            problems.add(field, message);
            refused(&app, &draft, &problems).await
        }
    }
}

async fn refused(app: &App, draft: &Draft, problems: &Problems) -> Result<Response, Error> {
    let materials = app.at_bench(|bench| Ok(bench.materials()?)).await?;
    let page = render(app, &materials, draft, problems)?;
    Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response())
}

impl LotDraft {
    pub(crate) fn typed(form: &Signed) -> Self {
        Self {
            received: form.text("received"),
            amount: form.text("amount"),
            price: form.text("price"),
            supplier: form.text("supplier"),
            notes: form.text("lot-notes"),
        }
    }

    /// Whether nothing was typed but the day.
    fn is_blank(&self) -> bool {
        let typed = [&self.amount, &self.price, &self.supplier, &self.notes];
        typed.iter().all(|text| text.is_empty())
    }

    /// The lot, or what is wrong with its fields.
    pub(crate) fn read(&self, problems: &mut Problems) -> Option<NewLot> {
        let currency = locale::current().currency;
        let day = self.received.parse::<jiff::civil::Date>();
        if day.is_err() {
            let message = text::material::give_the_day_on_which_it_came();
            problems.add("received", message);
        }
        let amount = stock::Stock::read(&self.amount, Kitchen::usual());
        if let Err(error) = &amount {
            problems.add("amount", sentence(&error.to_string()));
        }
        let price = match self.price.as_str() {
            "" => Ok(None),
            typed => stock::read_price(typed, Kitchen::usual(), currency).map(Some),
        };
        if let Err(error) = &price {
            problems.add("price", sentence(&error.to_string()));
        }
        let (Ok(day), Ok(amount), Ok(price), true) = (day, amount, price, problems.is_empty())
        else {
            return None;
        };
        Some(NewLot {
            received_on: day.to_string(),
            amount,
            currency: price
                .as_ref()
                .and_then(|price| price.currency)
                .map_or(String::new(), String::from),
            price: price.map_or(String::new(), |price| price.plain),
            supplier: self.supplier.clone(),
            notes: self.notes.clone(),
        })
    }
}
