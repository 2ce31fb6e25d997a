//! A page for people: its parts once, and three ways to put them on paper.

mod html;
mod markdown;
mod plain;

use crate::word::words;
use alloc::string::String;
use alloc::vec::Vec;

words! {
    /// What a page is written as.
    pub enum Medium {
        /// One HTML document with its style and pictures inside: no script, nothing from elsewhere.
        Html = "html",
        /// Markdown, as CommonMark with tables; pictures are told in words.
        Markdown = "markdown",
        /// Plain text in lines of at most 80 columns; pictures are told in words.
        Text = "text",
    }
}

/// A page, from its head to its foot.
#[derive(Debug, Default)]
pub(super) struct Paper {
    /// The language it is told in, as `en`.
    pub(super) language: String,
    pub(super) title: String,
    /// The shop, in the lines it gave.
    pub(super) shop: Vec<String>,
    /// What the page is about: a name and a value each.
    pub(super) about: Vec<(String, String)>,
    /// What is told in words.
    pub(super) told: Vec<Section>,
    /// What is shown in pictures, beside the words where there is room.
    pub(super) shown: Vec<Section>,
    /// What stands under all of it.
    pub(super) foot: Vec<Section>,
}

/// A part of a page under its heading.
#[derive(Debug)]
pub(super) struct Section {
    pub(super) id: &'static str,
    pub(super) heading: String,
    pub(super) blocks: Vec<Block>,
}

/// A piece of a section.
#[derive(Debug)]
pub(super) enum Block {
    /// What matters most, in a sentence.
    Lead(String),
    /// Sentences, a paragraph each.
    Lines(Vec<String>),
    /// A name or a number, and what belongs to it.
    Facts(Vec<(String, String)>),
    /// Items that are referred to by their number.
    Numbered(Vec<String>),
    /// Items to be ticked off.
    Ticked(Vec<String>),
    /// Lines of cells.
    Table(Table),
    /// A picture, and what it shows in words.
    Picture {
        svg: String,
        told: Vec<(String, String)>,
    },
}

/// Lines of cells under a heading each.
#[derive(Debug)]
pub(super) struct Table {
    /// The heading of each column, and whether it holds numbers.
    pub(super) columns: Vec<(String, bool)>,
    pub(super) rows: Vec<Vec<String>>,
    /// Lines that sum up, under a rule: a name, and a number in the last column. The last sums up all.
    pub(super) totals: Vec<(String, String)>,
}

impl Section {
    pub(super) const fn new(id: &'static str, heading: String, blocks: Vec<Block>) -> Self {
        Section {
            id,
            heading,
            blocks,
        }
    }
}

impl Paper {
    /// The page in one of its forms; the same bytes for the same page.
    pub(super) fn write(&self, medium: Medium) -> String {
        match medium {
            Medium::Html => html::html(self),
            Medium::Markdown => markdown::markdown(self),
            Medium::Text => plain::plain(self),
        }
    }

    /// The sections in the order they are read.
    fn sections(&self) -> impl Iterator<Item = &Section> {
        self.told.iter().chain(&self.shown).chain(&self.foot)
    }
}
