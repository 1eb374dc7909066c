#pragma once

#include "layout/sheets/pen.h"
#include "render/pdf.h"
#include "support/command.h"
#include "support/shipped_fonts.h"

#include <stdexcept>
#include <string>
#include <vector>

namespace thawslip::test_support {

/// Lines that ask much of a face and of a reader: accents in composed glyphs at two depths,
/// fractions, two scripts more, ligatures, marks; U+2011, for which many faces draw "-"; MU and
/// MICRO SIGN, for which many draw the same.
inline const std::vector<std::string>& demanding_lines() {
    static const std::vector<std::string> lines{
        "Crème brûlée, ½ l, 74 °C, ǻ, Ω, жир",
        "a no‑break hyphen, a plain-old hyphen, a no‑break one again",
        "5 µm of μ; 3–3½ h — “done”",
        "office, flat, fi fl ffi: ligatures",
        "x̂ and q̃: marks on letters",
        "☐ 200 g baby spinach (small) [bag] \\ 100 %",
    };
    return lines;
}

/// A PDF file of some pages with those lines in regular, and a dish in bold.
struct WordsFile {
    ScratchFolder folder;
    std::string file = folder / "words.pdf";

    explicit WordsFile(int pages = 1) {
        using namespace literals;
        const auto fonts = shipped_fonts();
        layout::Frame frame;
        frame.sheet = {6_in, 4_in};
        layout::Pen pen{frame, fonts};
        Length y = 40_pt;
        for (const auto& line : demanding_lines()) {
            pen.write(line, {20_pt, y}, {11_pt});
            y += 24_pt;
        }
        pen.write("SQUASH STEW", {20_pt, y}, {20_pt, typeset::Weight::Bold});
        if (pen.fault()) {
            throw std::runtime_error{"a face lacks a character"};
        }
        const std::vector<layout::Frame> frames(static_cast<std::size_t>(pages), frame);
        write_file(file, render::pdf(frames, fonts, {"Wörds (one \\ two)", "en", {}}));
    }
};

inline bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

} // namespace thawslip::test_support
