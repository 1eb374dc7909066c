#include "service/read/read_bags.h"

#include "code/read_picture.h"
#include "code/symbol.h"
#include "kitchen/bag_id.h"
#include "photo/photo.h"
#include "service/freezer/packages_of_bags.h"
#include "service/read/old_label.h"
#include "wording/fields.h"

#include <algorithm>
#include <fmt/format.h>
#include <iterator>

namespace thawslip::service {
namespace {

bool is_bag_id(const std::string& text) {
    return kitchen::parse_bag_id(text).ok();
}

/// Where a bag is that is not in the freezer any longer, if its owner has said so.
std::string_view whereabouts(archive::State state) {
    switch (state) {
    case archive::State::Out: return "this bag was taken out of the freezer";
    case archive::State::Eaten: return "this bag is known as eaten";
    case archive::State::Discarded: return "this bag is known as discarded";
    case archive::State::NeverFilled: return "this bag is known as never filled";
    case archive::State::Renamed:
    case archive::State::Frozen: break;
    }
    return {};
}

std::vector<std::string> cautions_of(const kitchen::PlannedPackage& planned,
                                     const wording::Style& style) {
    std::vector<std::string> cautions;
    for (const auto& caution : planned.cautions) {
        if (caution.level >= kitchen::CautionLevel::Card) {
            cautions.push_back(say_caution(caution, style.language));
        }
    }
    return cautions;
}

code::Message message_in_full(const KnownBag& known, const wording::Style& style) {
    const auto& bags = known.package.bags;
    const auto bag = std::ranges::find(bags, known.bag.id, &kitchen::Bag::id);
    auto message = code::message_in_full(
        known.package, bag != bags.end() ? *bag : kitchen::Bag{known.bag.id, 1, 1});
    message.cautions = cautions_of(known.package, style);
    return message;
}

/// What the archive knows of the bag that a label is of.
void hold_label(const code::Message& read, archive::Archive* archive, Messages& messages) {
    const auto bag =
        archive == nullptr || read.bag_id.empty() ? std::nullopt : archive->bag(read.bag_id);
    if (bag) {
        say_where(*bag, messages);
        hold_against_archive(read, *bag, *archive, messages);
    }
}

void read_text(archive::Archive* archive, const std::string& text, Readings& readings) {
    if (auto message = code::parse(text)) {
        hold_label(message.value(), archive, readings.messages);
        readings.bags.emplace_back(std::move(message).value());
    } else if (message.fault().kind == code::ReadFault::Kind::LaterGrammar) {
        readings.messages.caution(message.fault().message);
        readings.bags.emplace_back(LaterWords{message.fault().text});
    } else {
        readings.messages.error(message.fault().message);
    }
}

} // namespace

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

Outcome<std::vector<std::string>> texts_in_photo(const std::string& bytes,
                                                 const std::string& file) {
    Outcome<std::vector<std::string>> outcome;
    const auto refuse = [&](const std::string& message, std::vector<std::string> hints = {}) {
        outcome.messages.add_in_order({{Severity::Error, {file}, {}, message, std::move(hints)}},
                                      {});
        return std::move(outcome);
    };
    const auto picture =
        photo::decode({reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size()}, {});
    if (!picture) {
        return refuse(picture.fault().message);
    }
    if (!code::can_read_back()) {
        return refuse("thawslip was built without a reader of codes");
    }
    auto texts = code::read_picture(picture.value());
    if (texts.empty()) {
        return refuse("no code was found in the picture",
                      {"hold the camera straight above the label, a hand's breadth away, in even "
                       "light",
                       "or type the id that stands beside or under the code: thawslip read "
                       "K7Q-2M4-9XW"});
    }
    outcome.value = std::move(texts);
    return outcome;
}

bool is_code_text(const std::string& typed) {
    const auto end = typed.find_last_not_of(" \t\r\n");
    const std::string_view words{typed.data(), end == std::string::npos ? 0 : end + 1};
    if (words.find_first_of("\t\r\n") != std::string_view::npos) {
        return true;
    }
    const auto message = code::parse(words);
    return message.ok() || message.fault().kind != code::ReadFault::Kind::Foreign;
}

bool name_bags(std::span<const std::string> texts) {
    return std::ranges::any_of(texts, is_bag_id);
}

void say_where(const archive::Bag& bag, Messages& messages) {
    if (const auto where = whereabouts(bag.state); !where.empty()) {
        messages.caution(fmt::format("{}: {} ({})", bag.id, where, bag.changed.substr(0, 10)));
    }
}

Readings read_bag(archive::Archive* archive, const std::string& typed, const wording::Style& style,
                  const ChooseBags& choose) {
    Readings readings;
    if (archive == nullptr) {
        readings.messages.error("nothing has been printed yet, so no bag is known");
        return readings;
    }
    const auto known = known_bag(*archive, typed, choose);
    readings.messages.add(known.messages);
    if (!known) {
        return readings;
    }
    say_where(known.value->bag, readings.messages);
    readings.bags.emplace_back(message_in_full(*known.value, style));
    return readings;
}

Readings read_texts(archive::Archive* archive, std::span<const std::string> texts,
                    const wording::Style& style) {
    Readings readings;
    for (const auto& text : texts) {
        if (is_bag_id(text)) {
            auto of_bag = read_bag(archive, text, style);
            readings.messages.add(of_bag.messages);
            std::ranges::move(of_bag.bags, std::back_inserter(readings.bags));
        } else {
            read_text(archive, text, readings);
        }
    }
    return readings;
}

} // namespace thawslip::service
