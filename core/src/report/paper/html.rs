//! A page as one HTML document that needs nothing from elsewhere.

use super::super::markup::escaped;
use super::super::picture;
use super::{Block, Paper, Section, Table};
use alloc::format;
use alloc::string::String;

const STYLE: &str = include_str!("style.css");

/// What every page says to its reader: nothing is fetched and nothing runs, whatever stands in a name.
const HEAD: &str = include_str!("head.html");

pub(super) fn html(paper: &Paper) -> String {
    let title = escaped(&paper.title);
    let mut out = format!(
        "<!DOCTYPE html>
<html lang=\"{}\">
<head>
{HEAD}<title>{title}</title>
\
         <style>
{STYLE}{}</style>
</head>
<body>
",
        escaped(&paper.language),
        picture::STYLE
    );
    out.push_str(&format!("<header>\n<h1>{title}</h1>\n"));
    if let Some((name, lines)) = paper.shop.split_first() {
        out.push_str(&format!(
            "<p class=\"shop\"><strong>{}</strong>",
            escaped(name)
        ));
        for line in lines {
            out.push_str(&format!("<br>{}", escaped(line)));
        }
        out.push_str("</p>\n");
    }
    facts(&mut out, &paper.about);
    out.push_str("</header>\n<main>\n<div class=\"told\">\n");
    sections(&mut out, &paper.told);
    out.push_str("</div>\n");
    if !paper.shown.is_empty() {
        out.push_str("<div class=\"shown\">\n");
        sections(&mut out, &paper.shown);
        out.push_str("</div>\n");
    }
    out.push_str("</main>\n<footer>\n");
    sections(&mut out, &paper.foot);
    out.push_str("</footer>\n</body>\n</html>\n");
    out
}

fn sections(out: &mut String, sections: &[Section]) {
    for section in sections {
        let heading = escaped(&section.heading);
        let id = section.id;
        out.push_str(&format!(
            "<section class=\"{id}\" aria-labelledby=\"on-{id}\">\n<h2 id=\"on-{id}\">{heading}</h2>\n"
        ));
        for piece in &section.blocks {
            block(out, piece);
        }
        out.push_str("</section>\n");
    }
}

fn block(out: &mut String, block: &Block) {
    match block {
        Block::Lead(text) => out.push_str(&format!("<p class=\"lead\">{}</p>\n", escaped(text))),
        Block::Lines(lines) => {
            for line in lines {
                out.push_str(&format!("<p>{}</p>\n", escaped(line)));
            }
        }
        Block::Facts(given) => facts(out, given),
        Block::Numbered(items) => list(out, "ol", items),
        Block::Ticked(items) => list(out, "ul", items),
        Block::Table(lines) => table(out, lines),
        Block::Picture { svg, .. } => {
            out.push_str(&format!("<figure>{svg}</figure>\n"));
        }
    }
}

fn facts(out: &mut String, facts: &[(String, String)]) {
    out.push_str("<dl>\n");
    for (name, value) in facts {
        let (name, value) = (escaped(name), escaped(value));
        out.push_str(&format!("<div><dt>{name}</dt><dd>{value}</dd></div>\n"));
    }
    out.push_str("</dl>\n");
}

fn list(out: &mut String, element: &str, items: &[String]) {
    out.push_str(&format!("<{element}>\n"));
    for item in items {
        out.push_str(&format!("<li>{}</li>\n", escaped(item)));
    }
    out.push_str(&format!("</{element}>\n"));
}

fn table(out: &mut String, table: &Table) {
    // A table that is wider than a phone scrolls by itself, and not the page.
    out.push_str("<div class=\"wide\"><table>\n<thead><tr>");
    for (heading, is_number) in &table.columns {
        let class = number_class(*is_number);
        out.push_str(&format!(
            "<th scope=\"col\"{class}>{}</th>",
            escaped(heading)
        ));
    }
    out.push_str("</tr></thead>\n<tbody>\n");
    for row in &table.rows {
        out.push_str("<tr>");
        for (cell, (_, is_number)) in row.iter().zip(&table.columns) {
            let class = number_class(*is_number);
            out.push_str(&format!("<td{class}>{}</td>", escaped(cell)));
        }
        out.push_str("</tr>\n");
    }
    out.push_str("</tbody>\n");
    if !table.totals.is_empty() {
        out.push_str("<tfoot>\n");
        // The name may take the place of all columns but the last.
        let wide = table.columns.len().saturating_sub(1);
        for (name, number) in &table.totals {
            let (name, number) = (escaped(name), escaped(number));
            out.push_str(&format!(
                "<tr><td colspan=\"{wide}\">{name}</td><td class=\"number\">{number}</td></tr>\n"
            ));
        }
        out.push_str("</tfoot>\n");
    }
    out.push_str("</table></div>\n");
}

const fn number_class(is_number: bool) -> &'static str {
    if is_number { " class=\"number\"" } else { "" }
}
