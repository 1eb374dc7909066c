#include "thawslip/sheets.h"

#include "base/list.h"
#include "library/parts.h"
#include "render/pdf.h"
#include "render/svg.h"
#include "service/day/day_cautions.h"
#include "service/print/check.h"
#include "service/print/printing.h"

namespace thawslip {
namespace {

service::What what_of(Print print) {
    switch (print) {
    case Print::Labels: return service::What::Labels;
    case Print::Cards: return service::What::Cards;
    case Print::FinishingCards: return service::What::FinishingCards;
    case Print::CookDayCards: return service::What::CookDayCards;
    case Print::Lists: return service::What::Lists;
    case Print::DaySheets: return service::What::DaySheets;
    case Print::DoorList: return service::What::DoorList;
    }
    return service::What::Labels;
}

service::Look look_of(const Look& look) {
    service::Look laid;
    laid.stock = look.stock;
    laid.layout = look.layout;
    laid.first_cell = look.first_cell;
    laid.skip = look.skip;
    laid.dots_per_inch = look.dots_per_inch;
    laid.large_print = look.large_print;
    laid.is_trial = look.trial;
    return laid;
}

std::vector<std::string> drawn(const std::vector<layout::Frame>& frames,
                               const service::Printing& printing, Format format) {
    const auto& fonts = printing.laid_out.setup.fonts;
    const auto& job = printing.job;
    if (format == Format::Pdf) {
        return {render::pdf(frames, fonts, {job.title, job.language, std::nullopt})};
    }
    return mapped(frames,
                  [&](const layout::Frame& frame) { return render::svg(frame, fonts, job.title); });
}

Sheets sheets_of(const service::Printing& printing, Format format) {
    Sheets sheets;
    sheets.prints = static_cast<int>(printing.job.prints.size());
    if (sheets.prints == 0) {
        return sheets;
    }
    sheets.sheets = printing.laid_out.fitting.sheets;
    sheets.stock = printing.laid_out.setup.medium.stock.name;
    std::vector<layout::Frame> frames;
    for (int sheet = 0; sheet < sheets.sheets; ++sheet) {
        frames.push_back(draw_sheet(printing.laid_out, sheet));
    }
    sheets.files = drawn(frames, printing, format);
    return sheets;
}

} // namespace

Outcome<Sheets> draw(const Kitchen& kitchen, const std::vector<DayText>& days, Print what,
                     const Look& look, Format format) {
    const auto& [settings, around] = kitchen.parts();
    return library::outcome_of(
        service::print(library::texts_of(days), what_of(what), look_of(look), settings, around),
        [format](const service::Printing& printing) { return sheets_of(printing, format); });
}

Outcome<bool> check(const Kitchen& kitchen, const std::vector<DayText>& days, const Look& look) {
    const auto& [settings, around] = kitchen.parts();
    auto checked = service::check(library::texts_of(days), look_of(look), settings, around);
    const bool may_be_printed = checked.value && !checked.messages.have_errors();
    if (checked.value) {
        checked.messages.add(service::cautions_of(checked.value->days, settings));
    }
    return {may_be_printed, library::messages_of(checked.messages)};
}

Outcome<std::vector<std::string>> code_texts(const Kitchen& kitchen,
                                             const std::vector<DayText>& days, const Look& look) {
    const auto& [settings, around] = kitchen.parts();
    return library::outcome_of(
        service::code_texts(library::texts_of(days), look_of(look), settings, around),
        [](std::vector<std::string> texts) { return texts; });
}

} // namespace thawslip
