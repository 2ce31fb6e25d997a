//! Data out: what the library answers, as plain dicts and lists with the members it has in JSON.

use pyo3::exceptions::PyTypeError;
use pyo3::prelude::*;
use pyo3::sync::PyOnceLock;
use pyo3::types::{PyBool, PyDict, PyInt, PyList, PyString};
use serde::ser::{
    Error, Impossible, Serialize, SerializeMap, SerializeSeq, SerializeStruct, SerializeTuple,
    Serializer,
};
use std::fmt::{self, Write};

/// An answer as plain data.
pub(crate) fn plain<'py, T: Serialize + ?Sized>(
    py: Python<'py>,
    answer: &T,
) -> PyResult<Bound<'py, PyAny>> {
    answer.serialize(Plain(py)).map_err(|failed| failed.0)
}

#[derive(Clone, Copy)]
struct Plain<'py>(Python<'py>);

/// Why there is no data, which only want of memory can be.
#[derive(Debug)]
struct Failed(PyErr);

impl fmt::Display for Failed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

impl std::error::Error for Failed {}

impl Error for Failed {
    fn custom<T: fmt::Display>(said: T) -> Self {
        Failed(PyTypeError::new_err(said.to_string()))
    }
}

impl From<PyErr> for Failed {
    fn from(failed: PyErr) -> Self {
        Failed(failed)
    }
}

type Data<'py> = Result<Bound<'py, PyAny>, Failed>;

/// Nothing the library answers has this form.
fn no_form<T>() -> Result<T, Failed> {
    Err(Failed::custom("an answer of this form is not known"))
}

macro_rules! whole {
    ($($name:ident: $Number:ty,)*) => { $(
        fn $name(self, number: $Number) -> Data<'py> {
            Ok(PyInt::new(self.0, number).into_any())
        }
    )* };
}

impl<'py> Serializer for Plain<'py> {
    type Ok = Bound<'py, PyAny>;
    type Error = Failed;
    type SerializeSeq = Items<'py>;
    type SerializeTuple = Items<'py>;
    type SerializeTupleStruct = Impossible<Self::Ok, Failed>;
    type SerializeTupleVariant = Impossible<Self::Ok, Failed>;
    type SerializeMap = Members<'py>;
    type SerializeStruct = Members<'py>;
    type SerializeStructVariant = Impossible<Self::Ok, Failed>;

    whole! {
        serialize_i8: i8, serialize_i16: i16, serialize_i32: i32, serialize_i64: i64,
        serialize_u8: u8, serialize_u16: u16, serialize_u32: u32, serialize_u64: u64,
    }

    fn serialize_bool(self, flag: bool) -> Data<'py> {
        Ok(PyBool::new(self.0, flag).to_owned().into_any())
    }

    fn serialize_str(self, text: &str) -> Data<'py> {
        Ok(PyString::new(self.0, text).into_any())
    }

    fn collect_str<T: fmt::Display + ?Sized>(self, value: &T) -> Data<'py> {
        let mut short = Short::default();
        if write!(short, "{value}").is_ok() {
            return self.serialize_str(short.text());
        }
        self.serialize_str(&value.to_string())
    }

    fn serialize_none(self) -> Data<'py> {
        Ok(self.0.None().into_bound(self.0))
    }

    fn serialize_some<T: Serialize + ?Sized>(self, value: &T) -> Data<'py> {
        value.serialize(self)
    }

    fn serialize_unit(self) -> Data<'py> {
        self.serialize_none()
    }

    fn serialize_unit_variant(self, _: &'static str, _: u32, word: &'static str) -> Data<'py> {
        self.serialize_str(word)
    }

    fn serialize_newtype_struct<T: Serialize + ?Sized>(
        self,
        _: &'static str,
        value: &T,
    ) -> Data<'py> {
        value.serialize(self)
    }

    fn serialize_seq(self, _: Option<usize>) -> Result<Items<'py>, Failed> {
        Ok(Items(PyList::empty(self.0)))
    }

    fn serialize_tuple(self, _: usize) -> Result<Items<'py>, Failed> {
        self.serialize_seq(None)
    }

    fn serialize_map(self, _: Option<usize>) -> Result<Members<'py>, Failed> {
        Ok(Members {
            dict: PyDict::new(self.0),
            key: None,
        })
    }

    fn serialize_struct(self, _: &'static str, _: usize) -> Result<Members<'py>, Failed> {
        self.serialize_map(None)
    }

    fn serialize_f32(self, _: f32) -> Data<'py> {
        no_form()
    }

    fn serialize_f64(self, _: f64) -> Data<'py> {
        no_form()
    }

    fn serialize_char(self, _: char) -> Data<'py> {
        no_form()
    }

    fn serialize_bytes(self, _: &[u8]) -> Data<'py> {
        no_form()
    }

    fn serialize_unit_struct(self, _: &'static str) -> Data<'py> {
        no_form()
    }

    fn serialize_newtype_variant<T: Serialize + ?Sized>(
        self,
        _: &'static str,
        _: u32,
        _: &'static str,
        _: &T,
    ) -> Data<'py> {
        no_form()
    }

    fn serialize_tuple_struct(
        self,
        _: &'static str,
        _: usize,
    ) -> Result<Self::SerializeTupleStruct, Failed> {
        no_form()
    }

    fn serialize_tuple_variant(
        self,
        _: &'static str,
        _: u32,
        _: &'static str,
        _: usize,
    ) -> Result<Self::SerializeTupleVariant, Failed> {
        no_form()
    }

    fn serialize_struct_variant(
        self,
        _: &'static str,
        _: u32,
        _: &'static str,
        _: usize,
    ) -> Result<Self::SerializeStructVariant, Failed> {
        no_form()
    }
}

/// A short text that is being written, such as an amount's.
struct Short {
    bytes: [u8; 64],
    length: usize,
}

impl Default for Short {
    fn default() -> Self {
        Short {
            bytes: [0; 64],
            length: 0,
        }
    }
}

impl Short {
    fn text(&self) -> &str {
        str::from_utf8(&self.bytes[..self.length]).unwrap_or_default()
    }
}

impl fmt::Write for Short {
    fn write_str(&mut self, text: &str) -> fmt::Result {
        let end = self.length + text.len();
        let room = self.bytes.get_mut(self.length..end).ok_or(fmt::Error)?;
        room.copy_from_slice(text.as_bytes());
        self.length = end;
        Ok(())
    }
}

/// Names of members that were answered before, each near the slot its address leads to. They are never let go.
static NAMES: [PyOnceLock<(&'static str, Py<PyString>)>; 512] = [const { PyOnceLock::new() }; 512];

/// The name of a member as a text of Python's.
fn name_of<'py>(py: Python<'py>, name: &'static str) -> Bound<'py, PyString> {
    let place = name.as_ptr().addr().wrapping_mul(0x9e37_79b9_7f4a_7c15) >> 48;
    for step in 0..4 {
        let slot = &NAMES[place.wrapping_add(step) % NAMES.len()];
        let (own, text) = slot.get_or_init(py, || (name, PyString::intern(py, name).unbind()));
        if std::ptr::eq(*own, name) {
            return text.bind(py).clone();
        }
    }
    PyString::intern(py, name)
}

/// A list that is being made.
struct Items<'py>(Bound<'py, PyList>);

impl<'py> SerializeSeq for Items<'py> {
    type Ok = Bound<'py, PyAny>;
    type Error = Failed;

    fn serialize_element<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Failed> {
        Ok(self.0.append(value.serialize(Plain(self.0.py()))?)?)
    }

    fn end(self) -> Data<'py> {
        Ok(self.0.into_any())
    }
}

impl<'py> SerializeTuple for Items<'py> {
    type Ok = Bound<'py, PyAny>;
    type Error = Failed;

    fn serialize_element<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Failed> {
        SerializeSeq::serialize_element(self, value)
    }

    fn end(self) -> Data<'py> {
        SerializeSeq::end(self)
    }
}

/// A dict that is being made.
struct Members<'py> {
    dict: Bound<'py, PyDict>,
    key: Option<Bound<'py, PyAny>>,
}

impl<'py> SerializeStruct for Members<'py> {
    type Ok = Bound<'py, PyAny>;
    type Error = Failed;

    fn serialize_field<T: Serialize + ?Sized>(
        &mut self,
        name: &'static str,
        value: &T,
    ) -> Result<(), Failed> {
        let py = self.dict.py();
        let value = value.serialize(Plain(py))?;
        Ok(self.dict.set_item(name_of(py, name), value)?)
    }

    fn end(self) -> Data<'py> {
        Ok(self.dict.into_any())
    }
}

impl<'py> SerializeMap for Members<'py> {
    type Ok = Bound<'py, PyAny>;
    type Error = Failed;

    fn serialize_key<T: Serialize + ?Sized>(&mut self, key: &T) -> Result<(), Failed> {
        self.key = Some(key.serialize(Plain(self.dict.py()))?);
        Ok(())
    }

    fn serialize_value<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Failed> {
        let value = value.serialize(Plain(self.dict.py()))?;
        Ok(self.dict.set_item(self.key.take(), value)?)
    }

    fn end(self) -> Data<'py> {
        Ok(self.dict.into_any())
    }
}
