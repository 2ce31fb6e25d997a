//! What a job costs: the price list of a counter, the estimate before and the invoice after.
//!
//! Every sum is exact and every line says why it is there. The library holds no tax law and no price of its own.

mod doubles;
mod fluid_prices;
mod goods;
mod labour;
#[expect(dead_code, reason = "estimate and invoice put lines")]
mod lines;
mod price_list;
mod read;
mod terms;

pub use fluid_prices::{ContainerPrice, FluidBilling, FluidPolicy, FluidPrices, OpenedPolicy};
pub use goods::{DisposalPrice, PartPrice, Stream, SupplyPrice, ThreadlockerPrice};
pub use labour::{Billed, LabourPrice, PaidBy, WaitPolicy};
pub use lines::{Cause, Line, Policy, TaxSum, Total, What};
pub use price_list::PriceList;

pub(crate) use read::FORMAT as PRICES_FORMAT;
pub use terms::Tax;
