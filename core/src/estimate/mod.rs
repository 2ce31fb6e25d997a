//! What a job costs: the price list of a counter, the estimate before and the invoice after.
//!
//! Every sum is exact and every line says why it is there. The library holds no tax law and no price of its own.

mod approval;
mod asked;
mod audit;
mod band;
mod books;
mod cases;
mod doubles;
mod facts;
mod fluid_prices;
mod goods;
mod invoice;
mod labour;
mod lines;
mod opening;
mod price_list;
mod quote;
mod read;
mod shelf;
mod terms;
mod variance;
mod waste;
mod work;

pub use approval::Approval;
pub use asked::{Asked, Full, Rest, Stock};
pub(crate) use audit::FORMAT as AUDIT_FORMAT;
pub use audit::{Audit, AuditItem, Audited, AuditedRecord, audit};
pub use band::{Case, Estimate, JobTimes, estimate};
pub use cases::{Assumption, CaseKind};
pub use fluid_prices::{ContainerPrice, FluidBilling, FluidPolicy, FluidPrices, OpenedPolicy};
pub use goods::{DisposalPrice, PartPrice, Stream, SupplyPrice, ThreadlockerPrice};
pub(crate) use invoice::FORMAT as INVOICE_FORMAT;
pub use invoice::{Invoice, Leftover, Opened, PricesRef, invoice};
pub use labour::{Billed, LabourPrice, PaidBy, WaitPolicy};
pub use lines::{Cause, Line, Policy, TaxSum, Total, What};
pub use price_list::PriceList;
pub(crate) use quote::FORMAT as ESTIMATE_FORMAT;
pub use quote::Quote;

pub(crate) use read::FORMAT as PRICES_FORMAT;
pub use shelf::{Shelf, Unused};
pub use terms::Tax;
pub use variance::{Against, Variance, Why};
pub use waste::{Waste, waste};
