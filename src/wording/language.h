#pragma once

#include "base/diagnostic.h"
#include "base/result.h"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::wording {

/// The words of one language: a table of phrases by key ("thaw.microwave").
class Language {
public:
    explicit Language(std::map<std::string, std::string, std::less<>> phrases)
        : phrases_{std::move(phrases)} {}

    /// The phrase for `key` with {0}, {1}… replaced by `values`. A number beyond the values stays
    /// as it is written.
    /// \pre the table has `key`: a test holds every shipped table to that
    std::string say(std::string_view key, const std::vector<std::string>& values = {}) const;

    /// The phrase for one thing, or that for several, whose {0} is how many.
    std::string say_count(std::string_view one, std::string_view several, std::size_t count) const;

    bool has(std::string_view key) const { return phrases_.find(key) != phrases_.end(); }
    std::vector<std::string> keys() const;

private:
    std::map<std::string, std::string, std::less<>> phrases_;
};

/// Reads a table of phrases: TOML, any depth of tables, every value a text.
/// \returns the language, or what is wrong with the table
Result<Language, Diagnostics> read_language(std::string_view toml, std::string_view file);

/// The languages that come with Thawslip, by their ISO 639-1 codes: "en", "es", "de".
std::vector<std::string> shipped_languages();

/// \pre `code` is one of shipped_languages(), or "es-419": Spanish with the words of the Americas
const Language& shipped_language(std::string_view code);

/// The code of the language as it is said where food is declared by a list of allergens: Spanish is
/// that of the Americas with the lists "us" and "canada".
std::string_view language_where(std::string_view code, std::string_view allergen_list);

} // namespace thawslip::wording
