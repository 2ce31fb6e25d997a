//! A page as plain text in lines that an 80-column printer holds.

use super::super::page::{Page, WIDTH};
use super::super::sentence::GLUE;
use super::{Block, Paper, Table};
use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

pub(super) fn plain(paper: &Paper) -> String {
    let mut page = Page::new();
    for line in &paper.shop {
        page.put("", line);
    }
    if !paper.title.is_empty() {
        page.heading(&paper.title);
    }
    facts(&mut page, &paper.about);
    for section in paper.sections() {
        page.heading(&section.heading);
        for piece in &section.blocks {
            block(&mut page, piece);
        }
    }
    page.into_text()
}

fn block(page: &mut Page, block: &Block) {
    match block {
        Block::Lead(text) => page.put("  ", text),
        Block::Lines(lines) => lines.iter().for_each(|line| page.put("  ", line)),
        Block::Facts(given) | Block::Picture { told: given, .. } => facts(page, given),
        Block::Numbered(items) => {
            for (item, number) in items.iter().zip(1..) {
                page.put(&format!("{number:>4}  "), item);
            }
        }
        Block::Ticked(items) => items.iter().for_each(|item| page.put("  [ ] ", item)),
        Block::Table(lines) => table(page, lines),
    }
}

/// What stands behind the names begins in one column. A name that leaves its value no room stands on a line of its own.
fn facts(page: &mut Page, facts: &[(String, String)]) {
    let longest = |text: &str| text.split(' ').map(letters).max().unwrap_or(0);
    let room = |value: &str| WIDTH.saturating_sub(4).saturating_sub(longest(value));
    let widest = facts.iter().map(|(name, _)| letters(name)).max();
    let least = facts.iter().map(|(_, value)| room(value)).min();
    let widest = widest.unwrap_or(0).min(16).min(least.unwrap_or(0));
    for (name, value) in facts {
        let mut name = shown(name);
        if letters(&name) > room(value) {
            page.put("  ", &name);
            name.clear();
        }
        page.put(&format!("  {name:<widest$}  "), value);
    }
}

fn letters(text: &str) -> usize {
    text.chars().count()
}

fn shown(text: &str) -> String {
    let letter = |letter: char| match letter {
        GLUE => ' ',
        letter if letter.is_control() => ' ',
        letter => letter,
    };
    text.chars().map(letter).collect()
}

/// Columns side by side; the widest gives way where the line is too short, and its text goes on below.
fn table(page: &mut Page, table: &Table) {
    let headings: Vec<String> = table.columns.iter().map(|(name, _)| name.clone()).collect();
    let lines: Vec<&Vec<String>> = [&headings].into_iter().chain(&table.rows).collect();
    let mut widths: Vec<usize> = Vec::new();
    let sums = table.totals.iter().map(|(_, number)| letters(number));
    let sums = sums.max().unwrap_or(0);
    for column in 0..table.columns.len() {
        let cells = lines.iter().filter_map(|line| line.get(column));
        widths.push(cells.map(|cell| letters(cell)).max().unwrap_or(0));
    }
    if let Some(last) = widths.last_mut() {
        *last = (*last).max(sums);
    }
    let gaps = widths.len().saturating_mul(2);
    let all = widths
        .iter()
        .fold(gaps, |sum, own| sum.saturating_add(*own));
    if let Some(widest) = widths.iter_mut().max() {
        *widest = widest.saturating_sub(all.saturating_sub(WIDTH)).max(8);
    }
    for line in lines {
        let cells: Vec<Vec<String>> = line
            .iter()
            .zip(&widths)
            .map(|(cell, width)| broken(&shown(cell), *width))
            .collect();
        let high = cells.iter().map(Vec::len).max().unwrap_or(0);
        for index in 0..high {
            let mut text = String::new();
            for ((cell, width), (_, is_number)) in cells.iter().zip(&widths).zip(&table.columns) {
                let part = cell.get(index).map_or("", String::as_str);
                text.push_str(&if *is_number {
                    format!("  {part:>width$}")
                } else {
                    format!("  {part:<width$}")
                });
            }
            page.line(text.trim_end());
        }
    }
    totals(page, table, &widths);
}

/// Sums under the last column; their names take the place of all the others.
fn totals(page: &mut Page, table: &Table, widths: &[usize]) {
    let Some((last, others)) = widths.split_last() else {
        return;
    };
    let gaps = others.len().saturating_sub(1).saturating_mul(2);
    let wide = others
        .iter()
        .fold(gaps, |sum, own| sum.saturating_add(*own));
    for (name, number) in &table.totals {
        let lines = broken(&shown(name), wide);
        for (index, name) in lines.iter().enumerate() {
            let number = if index.saturating_add(1) == lines.len() {
                shown(number)
            } else {
                String::new()
            };
            let text = format!("  {name:<wide$}  {number:>last$}");
            page.line(text.trim_end());
        }
    }
}

/// A text in lines of a width, broken between words.
fn broken(text: &str, width: usize) -> Vec<String> {
    let mut lines = Vec::new();
    let mut line = String::new();
    for word in text.split(' ').filter(|word| !word.is_empty()) {
        let needed = letters(&line)
            .saturating_add(1)
            .saturating_add(letters(word));
        if !line.is_empty() && needed > width {
            lines.push(core::mem::take(&mut line));
        }
        if !line.is_empty() {
            line.push(' ');
        }
        line.push_str(word);
    }
    lines.push(line);
    lines
}
