#include "app/archive_bags.h"
#include "app/clock.h"
#include "app/commands.h"
#include "app/files/input_file.h"
#include "app/json/answers.h"
#include "app/message_text.h"
#include "app/time_limit.h"
#include "code/message.h"
#include "code/read_picture.h"
#include "code/symbol.h"
#include "kitchen/bag_id.h"
#include "photo/photo.h"
#include "wording/fields.h"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>
#include <iostream>
#include <iterator>
#include <ostream>

namespace thawslip::app {
namespace {

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
    constexpr std::size_t most = std::size_t{64} * 1024; // a code holds 4 296 characters at most
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

/// A name without a dot or a slash is no photograph's, unless there is such a file.
bool may_be_bag_id(const std::string& argument) {
    std::error_code error;
    return argument.find_first_of("./") == std::string::npos &&
           !std::filesystem::exists(argument, error);
}

/// Prints of several bags, parted as the form of the answer wants it.
class Teller {
public:
    Teller(AnswerAs answer, const Settings& settings, Console console)
        : answer_{answer}, style_{style_of(settings)}, console_{console} {}

    void tell(const code::Message& message) {
        if (answer_ == AnswerAs::Json) {
            console_.out << message_json(message, today(), style_) << "\n";
        } else {
            console_.out << (told_ > 0 ? "\n" : "") << message_text(message, today(), style_);
        }
        ++told_;
    }

    /// Where the code has a few words, the description knows whole sentences.
    std::vector<std::string> cautions_of(const kitchen::PlannedPackage& planned) const {
        std::vector<std::string> cautions;
        for (const auto& caution : planned.cautions) {
            if (caution.level >= kitchen::CautionLevel::Card) {
                cautions.push_back(say_caution(caution, style_.language));
            }
        }
        return cautions;
    }

    /// A label of a later Thawslip: its words are instructions all the same.
    void show(const code::ReadFault& later) {
        console_.err << "caution: " << later.message << "\n";
        if (answer_ == AnswerAs::Json) {
            console_.out << text_json(later.text) << "\n";
        } else {
            console_.out << (told_ > 0 ? "\n" : "") << later.text << "\n"
                         << style_.say("standing.local-rules") << "\n";
        }
        ++told_;
    }

    ExitStatus status() const { return told_ > 0 ? ExitStatus::Done : ExitStatus::Refused; }

private:
    AnswerAs answer_;
    wording::Style style_;
    Console console_;
    int told_ = 0;
};

/// Where a bag is that is not in the freezer any longer, if its owner has said so.
std::string_view whereabouts(archive::State state) {
    switch (state) {
    case archive::State::Out: return "this bag was taken out of the freezer";
    case archive::State::Eaten: return "this bag is known as eaten";
    case archive::State::Thrown: return "this bag is known as thrown away";
    case archive::State::Frozen: break;
    }
    return {};
}

void read_bag(const std::string& typed_id, const Settings& settings, Console console,
              Teller& teller) {
    const auto known = package_of(typed_id, settings, console);
    if (!known) {
        return;
    }
    if (const auto where = whereabouts(known->bag.state); !where.empty()) {
        console.err << fmt::format("caution: {} ({})\n", where, known->bag.changed.substr(0, 10));
    }
    const auto& bags = known->package.bags;
    const auto bag = std::ranges::find(bags, known->bag.id, &kitchen::Bag::id);
    auto message = code::message_in_full(
        known->package, bag != bags.end() ? *bag : kitchen::Bag{known->bag.id, 1, 1});
    message.cautions = teller.cautions_of(known->package);
    teller.tell(message);
}

void read_texts(const std::vector<std::string>& texts, const Settings& settings, Console console,
                Teller& teller) {
    for (const auto& text : texts) {
        if (kitchen::parse_bag_id(text)) {
            read_bag(text, settings, console, teller);
        } else if (const auto message = code::parse(text)) {
            teller.tell(message.value());
        } else if (message.fault().kind == code::ReadFault::Kind::LaterGrammar) {
            teller.show(message.fault());
        } else {
            console.err << "error: " << message.fault().message << "\n";
        }
    }
}

} // namespace

ExitStatus read(const std::string& what, AnswerAs answer, const Settings& settings,
                Console console) {
    Teller teller{answer, settings, console};
    if (what != "-" && may_be_bag_id(what)) {
        read_bag(what, settings, console, teller);
        if (!kitchen::parse_bag_id(what)) {
            console.err << "    hint: there is no photograph of that name either\n";
        }
        return teller.status();
    }
    const auto texts = what == "-" ? read_standard_input() : read_photo(what);
    if (!texts) {
        console.err << texts.fault() << "\n";
        return ExitStatus::Refused;
    }
    read_texts(texts.value(), settings, console, teller);
    return teller.status();
}

} // namespace thawslip::app
