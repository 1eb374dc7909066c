#pragma once

#include "base/result.h"
#include "desk/phones/pairing.h"

#include <functional>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

namespace thawslip::desk {

/// A phone that was let in.
struct Phone {
    int number = 0;     ///< counts from 1, and is never given again
    std::string name;   ///< as its owner calls it
    std::string key;    ///< by which it is known
    std::string paired; ///< when, by the kitchen's clock: "2026-10-17T12:00:00"
    friend bool operator==(const Phone&, const Phone&) = default;
};

/// What the phones' keeper asks of the computer. Called one at a time.
struct PhonePlace {
    std::string origin; ///< where phones ask: "http://192.168.1.20:61722"
    /// Of the certificate (http/certificate.h), where it is https.
    std::string fingerprint;
    std::function<SteadyTime()> now;
    std::function<std::string()> moment;      ///< as `Phone::paired` has it
    std::function<std::string()> random_text; ///< 128 bits as hexadecimal digits
    /// Keeps all that are let in, for the next run. \throws SystemFailure
    std::function<void(const std::vector<Phone>&)> keep;
};

/// What stands on the cook's page while a phone may come.
struct Offer {
    std::string code;
    std::string link; ///< "http://192.168.1.20:61722/#pair=K7QM-3XPA"
    std::chrono::seconds left;
};

/// Why a phone is not let in.
enum class NotLetIn { WrongCode, TooManyTries, NoName, TooMany };

/// The phones of a kitchen, each with a name and a key of its own. All functions may be called from
/// several threads.
class Phones {
public:
    static constexpr std::size_t most = 50;         ///< phones
    static constexpr std::size_t longest_name = 40; ///< code points
    static constexpr int tries_a_minute = 20;       ///< at any code, by whomever

    Phones(PhonePlace place, std::vector<Phone> known);

    const std::string& origin() const { return place_.origin; }
    const std::string& fingerprint() const { return place_.fingerprint; }
    std::vector<Phone> all() const;

    /// Offers a new code; the one before is worth nothing from here on.
    Offer offer();
    /// The code that is open; nothing where none is.
    std::optional<Offer> open_offer() const;
    void take_offer_back();

    /// Lets a phone in. \param name what its owner calls it
    Result<Phone, NotLetIn> pair(const std::string& code, const std::string& name);
    /// The phone that has a key. As long for a wrong key as for a right one.
    std::optional<Phone> with_key(const std::string& key) const;
    /// From here on its key is worth nothing. \returns whether there was such a phone
    bool revoke(int number);

private:
    Offer offer_of(const Pairing& pairing) const;

    PhonePlace place_;
    mutable std::mutex mutex_;
    std::vector<Phone> phones_;
    std::optional<Pairing> pairing_;
    Tries tries_{tries_a_minute, std::chrono::seconds{60}};
};

/// A phone's name as it is shown: on one line, without blanks around it, not too long; empty where
/// nothing of it can be shown.
std::string phone_name(const std::string& text);

} // namespace thawslip::desk
