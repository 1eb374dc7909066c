#include "app/clock.h"
#include "app/commands.h"
#include "app/input_file.h"
#include "app/time_limit.h"
#include "code/message.h"
#include "code/read_picture.h"
#include "code/symbol.h"
#include "photo/photo.h"
#include "wording/phrases.h"

#include <fmt/format.h>
#include <iostream>
#include <iterator>
#include <ostream>

namespace thawslip::app {
namespace {

const wording::Language& language() {
    return wording::shipped_language("en");
}

/// What was read: texts of codes, or why there are none.
using Texts = Result<std::vector<std::string>, std::string>;

/// What a handheld scanner typed: one text, or several with an empty line between.
std::vector<std::string> typed_texts(const std::string& typed) {
    std::vector<std::string> texts;
    std::size_t start = 0;
    while (start < typed.size()) {
        const auto end = std::min(typed.find("\n\n", start), typed.size());
        if (end > start) {
            texts.push_back(typed.substr(start, end - start));
        }
        start = end + 2;
    }
    return texts;
}

Texts read_standard_input() {
    constexpr std::size_t most = 64 * 1024; // a code holds 4 296 characters at most
    std::string typed;
    char c = 0;
    while (typed.size() <= most && std::cin.get(c)) {
        typed += c;
    }
    if (typed.size() > most) {
        return Failure{std::string{"standard input: error: this is more than any code holds"}};
    }
    auto texts = typed_texts(typed);
    if (texts.empty()) {
        return Failure{std::string{"standard input: error: there is no text"}};
    }
    return texts;
}

Texts read_photo(const std::string& file) {
    constexpr int seconds = 20; // a hundred times what any photograph of a label takes
    const TimeLimit until{seconds};
    const photo::Limits limits;
    const auto bytes = read_input(file, limits.bytes);
    if (!bytes) {
        auto text = to_text(bytes.fault());
        text.pop_back();
        return Failure{std::move(text)};
    }
    const auto& data = bytes.value();
    const auto picture =
        photo::decode({reinterpret_cast<const std::uint8_t*>(data.data()), data.size()}, limits);
    if (!picture) {
        return Failure{fmt::format("{}: error: {}", file, picture.fault().message)};
    }
    if (!code::can_read_back()) {
        return Failure{
            fmt::format("{}: error: thawslip was built without a reader of codes", file)};
    }
    auto texts = code::read_picture(picture.value());
    if (texts.empty()) {
        return Failure{fmt::format("{}: error: no code was found in the picture\n"
                                   "    hint: hold the camera straight above the label, a hand's "
                                   "breadth away, in even light",
                                   file)};
    }
    return texts;
}

void tell_dates(const code::Message& message, std::ostream& out) {
    if (message.made) {
        out << language().say("label.made") << " " << say_date(*message.made, language()) << "\n";
    }
    if (!message.keep_until) {
        return;
    }
    const auto& keep = *message.keep_until;
    const wording::Language& words = language();
    out << say_keep_until_head({keep.date, keep.basis, std::nullopt}, words) << " "
        << say_date(keep.date, words);
    const auto past = kitchen::days_between(keep.date, today()).count();
    if (past > 0) {
        const auto days = fmt::format("{} day{}", past, past == 1 ? "" : "s");
        out << (keep.basis == kitchen::DateBasis::SetByCook ? " - that was " + days + " ago"
                                                            : " - " + days + " past its best");
    }
    out << "\n";
}

std::string cooking_text(const code::Cooking& cooking) {
    kitchen::Cook cook;
    cook.in = cooking.in;
    cook.setting = cooking.setting;
    cook.time = cooking.time;
    auto text = say_cooking(cook, language());
    if (cooking.until) {
        text +=
            fmt::format(", until {:g} {}", cooking.until->tenths / 10.0,
                        cooking.until->scale == kitchen::TemperatureScale::Celsius ? "°C" : "°F");
    }
    return text;
}

/// The steps as a person wants them at the stove: what it is, then what to do, in order.
void tell(const code::Message& message, std::ostream& out) {
    out << message.dish << (message.bag_id.empty() ? "" : "  (" + message.bag_id + ")") << "\n";
    if (message.servings) {
        out << language().say("label.serves", {std::to_string(*message.servings)}) << "\n";
    }
    tell_dates(message, out);
    if (message.thaw) {
        kitchen::PlannedPackage planned;
        planned.package.thaw = {*message.thaw, message.thaw_note, {}};
        out << say_thaw_label(*message.thaw, language()) << " " << say_thaw(planned, language())
            << "\n";
    }
    for (const auto& addition : message.additions) {
        out << language().say("label.add") << " " << say_when(addition.when, language()) << ": "
            << addition.what << (addition.bag.empty() ? "" : " (" + addition.bag + ")") << "\n";
    }
    if (const auto cooking = cooking_text(message.cooking); !cooking.empty()) {
        out << language().say("label.cook") << " " << cooking << "\n";
    }
    for (std::size_t i = 0; i < message.steps.size(); ++i) {
        out << i + 1 << ". " << message.steps[i] << "\n";
    }
    for (std::size_t i = 0; i < message.allergens.size(); ++i) {
        out << (i == 0 ? language().say("label.contains") + " " : ", ") << message.allergens[i]
            << (i + 1 == message.allergens.size() ? "\n" : "");
    }
    if (!message.note.empty()) {
        out << language().say("label.notes") << " " << message.note << "\n";
    }
    if (message.extent == code::Extent::SeeCard) {
        out << "the rest stands on the cook-day card of this bag\n";
    }
    out << language().say("standing.local-rules") << "\n";
}

} // namespace

ExitStatus read(const std::string& photo, Console console) {
    const auto texts = photo == "-" ? read_standard_input() : read_photo(photo);
    if (!texts) {
        console.err << texts.fault() << "\n";
        return ExitStatus::Refused;
    }
    bool any = false;
    for (const auto& text : texts.value()) {
        const auto message = code::parse(text);
        if (!message) {
            console.err << "error: " << message.fault().message << "\n";
            continue;
        }
        console.out << (any ? "\n" : "");
        tell(message.value(), console.out);
        any = true;
    }
    return any ? ExitStatus::Done : ExitStatus::Refused;
}

} // namespace thawslip::app
