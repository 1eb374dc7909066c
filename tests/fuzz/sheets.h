#pragma once

#include "kitchen/plan.h"
#include "layout/compose.h"
#include "layout/layout.h"
#include "typeset/font_set.h"
#include "wording/print.h"

#include <string>
#include <vector>

// What the targets share that draw something: the shipped faces, layouts and stocks, and the
// sample day.
namespace thawslip::fuzz {

const typeset::FontSet& fonts();

/// A shipped file's text; `path` from the top of the source.
std::string shipped_text(const std::string& path);

/// The shipped layout of this kind that is drawn for the cells of `stock`; nullptr without one.
const layout::Layout* layout_for(wording::Kind kind, const layout::Stock& stock);

layout::Stock shipped_stock(const std::string& name);

/// A print and what its code may say.
struct Said {
    wording::Print print;
    std::vector<std::string> code_texts;
};

/// One print of each kind for each of the first packages, in one of the shipped languages.
std::vector<Said> prints_of(const kitchen::Plan& plan, const std::string& language);

/// The sample day's prints.
const std::vector<Said>& sample_prints();

/// Fits the prints that `layouts` has a layout for, draws every sheet, and holds what is drawn to
/// what frames promise: finite numbers, ink on the sheet.
void hold_drawn(const std::vector<Said>& prints, const layout::Layouts& layouts,
                const layout::Stock& stock);

} // namespace thawslip::fuzz
