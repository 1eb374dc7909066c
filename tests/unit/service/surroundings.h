#pragma once

#include "base/text_file.h"
#include "service/print/surroundings.h"
#include "support/shipped_fonts.h"

namespace thawslip::test_support {

inline layout::StockReading roll() {
    return layout::read_stock("cell = [\"100 mm\", \"75 mm\"]\nroll = true\n", "roll.toml", "roll");
}

inline std::string shipped_text(const std::string& file) {
    return read_text_file(THAWSLIP_SOURCE_DIR "/layouts/" + file, 1U << 18U).value();
}

/// A world in which there is one stock, and of the cook's own files one more.
inline service::Surroundings surroundings() {
    service::Surroundings around;
    around.stock = [](const std::string& name) {
        return name == "roll" ? std::optional{roll()} : std::nullopt;
    };
    around.stocks = [] { return layout::StockShelf{{*roll().stock}, {}}; };
    around.layouts = [](const std::set<wording::Kind>&) {
        return std::vector<service::ShippedText>{
            {"wide", "wide.toml", shipped_text("label/wide.toml")}};
    };
    around.own_file = [](const std::string& file) -> Result<std::string, Diagnostic> {
        if (file == "mine.toml") {
            return std::string{"cell = [\"90 mm\", \"60 mm\"]\nroll = true\n"};
        }
        return Failure{Diagnostic{Severity::Error, {file}, {}, "there is no such file", {}}};
    };
    around.fonts = shipped_fonts;
    return around;
}

} // namespace thawslip::test_support
