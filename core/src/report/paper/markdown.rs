//! A page as Markdown.

use super::super::sentence::GLUE;
use super::{Block, Paper, Table};
use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

pub(super) fn markdown(paper: &Paper) -> String {
    let mut out = String::new();
    if !paper.shop.is_empty() {
        let lines: Vec<String> = paper.shop.iter().map(|line| literal(line)).collect();
        // Two spaces end a line within a paragraph.
        out.push_str(&format!("{}\n\n", lines.join("  \n")));
    }
    out.push_str(&format!("# {}\n\n", literal(&paper.title)));
    facts(&mut out, &paper.about);
    for section in paper.sections() {
        out.push_str(&format!("## {}\n\n", literal(&section.heading)));
        for piece in &section.blocks {
            block(&mut out, piece);
        }
    }
    out.truncate(out.trim_end().len());
    out.push('\n');
    out
}

fn block(out: &mut String, block: &Block) {
    match block {
        Block::Lead(text) => out.push_str(&format!("**{}**\n\n", literal(text))),
        Block::Lines(lines) => {
            for line in lines {
                out.push_str(&format!("{}\n\n", literal(line)));
            }
        }
        Block::Facts(given) | Block::Picture { told: given, .. } => facts(out, given),
        Block::Numbered(items) => {
            for (item, number) in items.iter().zip(1..) {
                out.push_str(&format!("{number}. {}\n", literal(item)));
            }
            out.push('\n');
        }
        Block::Ticked(items) => {
            for item in items {
                out.push_str(&format!("- [ ] {}\n", literal(item)));
            }
            out.push('\n');
        }
        Block::Table(lines) => table(out, lines),
    }
}

fn facts(out: &mut String, facts: &[(String, String)]) {
    for (name, value) in facts {
        out.push_str(&format!("- **{}** {}\n", literal(name), literal(value)));
    }
    out.push('\n');
}

fn table(out: &mut String, table: &Table) {
    let headings = table.columns.iter().map(|(heading, _)| literal(heading));
    row(out, headings);
    let rules = table.columns.iter();
    row(
        out,
        rules.map(|(_, is_number)| if *is_number { "--:" } else { "---" }.into()),
    );
    for line in &table.rows {
        row(out, line.iter().map(|cell| literal(cell)));
    }
    let gap = table.columns.len().saturating_sub(2);
    for (name, number) in &table.totals {
        let gap = core::iter::repeat_n(String::new(), gap);
        let ends = [literal(name)].into_iter().chain(gap);
        row(out, ends.chain([literal(number)]));
    }
    out.push('\n');
}

fn row(out: &mut String, cells: impl Iterator<Item = String>) {
    let cells: Vec<String> = cells.collect();
    out.push_str(&format!("| {} |\n", cells.join(" | ")));
}

/// A text of which nothing is read as markup, in one line.
fn literal(text: &str) -> String {
    let mut out = String::new();
    for letter in text.chars() {
        match letter {
            GLUE => out.push(' '),
            letter if letter.is_control() => out.push(' '),
            '\\' | '`' | '*' | '_' | '[' | ']' | '<' | '>' | '|' | '#' | '~' | '&' | '!' => {
                out.push('\\');
                out.push(letter);
            }
            letter => out.push(letter),
        }
    }
    out
}
