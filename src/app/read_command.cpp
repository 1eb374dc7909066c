#include "app/archive_place.h"
#include "app/choose_bags.h"
#include "app/clock.h"
#include "app/commands.h"
#include "app/commands/report.h"
#include "app/json/answers.h"
#include "app/message_text.h"
#include "app/time_limit.h"
#include "files/input_file.h"
#include "kitchen/bag_id.h"
#include "photo/photo.h"
#include "service/read/read_bags.h"

#include <filesystem>
#include <iostream>
#include <ostream>

namespace thawslip::app {
namespace {

using Texts = service::Outcome<std::vector<std::string>>;

Texts refused(const std::string& message) {
    Texts texts;
    texts.messages.add_in_order({{Severity::Error, {"standard input"}, {}, message, {}}}, {});
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
        return refused("this is more than any code holds");
    }
    auto texts = service::typed_texts(typed);
    return texts.empty() ? refused("there is no text") : Texts{std::move(texts), {}};
}

Texts read_photo(const std::string& file) {
    constexpr int seconds = 20; // a hundred times what any photograph of a label takes
    const TimeLimit until{seconds};
    const auto bytes = files::read_input(file, photo::Limits{}.bytes);
    if (!bytes) {
        Texts texts;
        texts.messages.add_in_order({bytes.fault()}, {});
        return texts;
    }
    return service::texts_in_photo(bytes.value(), file);
}

/// A name without a dot or a slash is no photograph's, unless there is such a file.
bool may_be_bag_id(const std::string& argument) {
    std::error_code error;
    return argument.find_first_of("./") == std::string::npos &&
           !std::filesystem::exists(argument, error);
}

struct InWords {
    const wording::Style& style;

    std::string operator()(const code::Message& message) const {
        return message_text(message, today(), style);
    }
    std::string operator()(const service::LaterWords& later) const {
        return later.text + "\n" + style.say("standing.local-rules") + "\n";
    }
};

struct InJson {
    const wording::Style& style;

    std::string operator()(const code::Message& message) const {
        return message_json(message, today(), style) + "\n";
    }
    std::string operator()(const service::LaterWords& later) const {
        return text_json(later.text) + "\n";
    }
};

/// Prints of several bags, parted as the form of the answer wants it.
ExitStatus show(const service::Readings& readings, AnswerAs answer, const wording::Style& style,
                Console console) {
    console.err << to_text(readings.messages);
    bool is_first = true;
    for (const auto& reading : readings.bags) {
        console.out << (answer == AnswerAs::Json
                            ? std::visit(InJson{style}, reading)
                            : (is_first ? "" : "\n") + std::visit(InWords{style}, reading));
        is_first = false;
    }
    return readings.bags.empty() ? ExitStatus::Refused : ExitStatus::Done;
}

} // namespace

ExitStatus read(const std::string& what, WhichOfSeveral which, AnswerAs answer,
                const Settings& settings, Console console) {
    const auto style = style_of(settings);
    std::optional<archive::Archive> archive;
    const auto open = [&] {
        archive = existing_archive(settings, archive::Mode::Read);
        return archive ? &*archive : nullptr;
    };
    if (what != "-" && may_be_bag_id(what)) {
        const auto status =
            show(service::read_bag(open(), what, style, choose_bags(which, console)), answer, style,
                 console);
        if (status != ExitStatus::Done && !kitchen::parse_bag_id(what)) {
            console.err << "    hint: there is no photograph of that name either\n";
        }
        return status;
    }
    const auto texts = what == "-" ? read_standard_input() : read_photo(what);
    console.err << to_text(texts.messages);
    if (!texts) {
        return ExitStatus::Refused;
    }
    auto* asked = service::name_bags(*texts.value) ? open() : nullptr;
    return show(service::read_texts(asked, *texts.value, style), answer, style, console);
}

} // namespace thawslip::app
