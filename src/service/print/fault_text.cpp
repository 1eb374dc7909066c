#include "service/print/fault_text.h"

#include "base/nearest.h"
#include "base/utf8.h"

#include <cmath>
#include <fmt/format.h>

namespace thawslip::service {
namespace {

using typeset::UnsettableCharacter;

std::string reason(const UnsettableCharacter& fault) {
    switch (fault.reason) {
    case UnsettableCharacter::Reason::NoGlyph: return "none of the faces has it";
    case UnsettableCharacter::Reason::Script:
        return "right-to-left and joined scripts are not set yet";
    case UnsettableCharacter::Reason::Control: return "it is a control character";
    }
    return {};
}

std::string name_of_kind(wording::Kind kind) {
    switch (kind) {
    case wording::Kind::BagLabel: return "label";
    case wording::Kind::FinishingCard: return "finishing card";
    case wording::Kind::CookDayCard: return "cook-day card";
    case wording::Kind::DoorList: return "door list";
    case wording::Kind::DaySheet: return "day sheet";
    case wording::Kind::PlanSheet: return "plan sheet";
    }
    return {};
}

std::vector<std::string> hints(const std::vector<std::string>& stocks, TypeSize type) {
    if (stocks.empty()) {
        return {"shorten the words: no shipped stock would take them"};
    }
    if (type == TypeSize::Large) {
        return {"large print takes a larger stock: print on " + list_of(stocks),
                "or print without large_print"};
    }
    return {"shorten the words, or print on " + list_of(stocks)};
}

/// A length that is needed, in tenths of a millimetre that are enough: never "0.0 mm too much".
std::string at_least(Length length) {
    return fmt::format("{:.1f} mm", std::ceil(length.in_millimetres() * 10.0) / 10.0);
}

/// A length that there is, in tenths of a millimetre that are surely there.
std::string at_most(Length length) {
    return fmt::format("{:.1f} mm", std::floor(length.in_millimetres() * 10.0) / 10.0);
}

/// The words of each kind of fault.
struct Words {
    const wording::Print& print;
    const layout::Stock& stock;
    const std::vector<std::string>& stocks;
    TypeSize type;

    Diagnostic operator()(const layout::ContentFault& fault) const {
        return {Severity::Error,
                {},
                fault.where.empty() ? print.where : fault.where,
                fmt::format("{} in {} of \"{}\" cannot be printed: {}",
                            name_of(fault.character.character), fault.field, print.dish,
                            reason(fault.character)),
                {"write it with other characters"}};
    }

    Diagnostic operator()(const layout::Refusal& refusal) const {
        return {Severity::Error,
                {},
                refusal.where,
                fmt::format("the {} of \"{}\" does not fit {}: {} too much at the smallest "
                            "type allowed; most of it is \"{}\"",
                            name_of_kind(print.kind), refusal.dish, stock.name,
                            at_least(refusal.short_by), refusal.area),
                hints(stocks, type)};
    }

    Diagnostic operator()(const layout::CodeRefusal& refusal) const {
        return {Severity::Error,
                {},
                refusal.where,
                fmt::format("the code of \"{}\" does not fit {}: it needs {}, there are {}",
                            refusal.dish, stock.name, at_least(refusal.too_small.needed),
                            at_most(refusal.too_small.available)),
                hints(stocks, type)};
    }

    Diagnostic operator()(const layout::Unplaced& unplaced) const {
        return {Severity::Error,
                unplaced.picture,
                {},
                fmt::format("this layout has no place for {}, which no {} may lack",
                            list_of(unplaced.fields), name_of_kind(print.kind)),
                {fmt::format("draw an area for it, with words = [\"{}\"]",
                             fmt::join(unplaced.fields, "\", \""))}};
    }

    Diagnostic operator()(const layout::UnreadableCode& unreadable) const {
        return {
            Severity::Error,
            {},
            unreadable.where,
            fmt::format("the code of \"{}\" was drawn but cannot be read back", unreadable.dish),
            {"this is a fault of thawslip, not yours: print on another stock, and tell us"}};
    }
};

} // namespace

Diagnostic to_diagnostic(const layout::Fault& fault, const wording::Print& print,
                         const layout::Stock& stock,
                         const std::vector<std::string>& stocks_that_fit, TypeSize type) {
    return std::visit(Words{print, stock, stocks_that_fit, type}, fault.why);
}

} // namespace thawslip::service
