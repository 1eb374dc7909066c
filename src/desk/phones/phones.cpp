#include "desk/phones/phones.h"

#include "base/character.h"
#include "base/split.h"
#include "base/utf8.h"
#include "http/guard.h"

#include <algorithm>

namespace thawslip::desk {
namespace {

int next_number(const std::vector<Phone>& phones) {
    int highest = 0;
    for (const auto& phone : phones) {
        highest = std::max(highest, phone.number);
    }
    return highest + 1;
}

bool shows_nothing(char32_t c) {
    return is_control(c) || is_line_break(c) || turns_direction(c);
}

} // namespace

std::string phone_name(const std::string& text) {
    if (first_invalid_utf8(text)) {
        return {};
    }
    auto name = to_utf32(text);
    std::erase_if(name, shows_nothing);
    if (std::all_of(name.begin(), name.end(), [](char32_t c) { return leaves_no_mark(c); })) {
        return {};
    }
    const auto line = to_utf8(name);
    return to_utf8(to_utf32(trimmed(line)).substr(0, Phones::longest_name));
}

Phones::Phones(PhonePlace place, std::vector<Phone> known)
    : place_{std::move(place)}, phones_{std::move(known)} {}

std::vector<Phone> Phones::all() const {
    const std::lock_guard lock{mutex_};
    return phones_;
}

Offer Phones::offer_of(const Pairing& pairing) const {
    return {pairing.code(), place_.origin + "/#pair=" + pairing.code(), pairing.left(place_.now())};
}

Offer Phones::offer() {
    const std::lock_guard lock{mutex_};
    pairing_.emplace(pairing_code(place_.random_text()), place_.now());
    return offer_of(*pairing_);
}

std::optional<Offer> Phones::open_offer() const {
    const std::lock_guard lock{mutex_};
    return pairing_ && pairing_->is_open(place_.now()) ? std::optional{offer_of(*pairing_)}
                                                       : std::nullopt;
}

void Phones::take_offer_back() {
    const std::lock_guard lock{mutex_};
    pairing_.reset();
}

/// What can be said without the code comes first, so that nobody loses it by a slip.
Result<Phone, NotLetIn> Phones::pair(const std::string& code, const std::string& name) {
    const std::lock_guard lock{mutex_};
    const auto now = place_.now();
    auto shown = phone_name(name);
    if (shown.empty()) {
        return Failure{NotLetIn::NoName};
    }
    if (!tries_.allow(now)) {
        return Failure{NotLetIn::TooManyTries};
    }
    if (phones_.size() >= most) {
        return Failure{NotLetIn::TooMany};
    }
    if (!pairing_ || !pairing_->lets_in(code, now)) {
        return Failure{NotLetIn::WrongCode};
    }
    auto phones = phones_;
    phones.push_back(
        {next_number(phones), std::move(shown), place_.random_text(), place_.moment()});
    place_.keep(phones);
    phones_ = std::move(phones);
    return phones_.back();
}

std::optional<Phone> Phones::with_key(const std::string& key) const {
    const std::lock_guard lock{mutex_};
    std::optional<Phone> found;
    for (const auto& phone : phones_) {
        if (http::is_same_key(key, phone.key)) {
            found = phone;
        }
    }
    return found;
}

bool Phones::revoke(int number) {
    const std::lock_guard lock{mutex_};
    auto phones = phones_;
    const auto gone = std::erase_if(phones, [&](const Phone& it) { return it.number == number; });
    phones_ = std::move(phones); // it is locked out even where that cannot be kept
    if (gone > 0) {
        place_.keep(phones_);
    }
    return gone > 0;
}

} // namespace thawslip::desk
