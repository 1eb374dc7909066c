#pragma once

#include <optional>
#include <string>

namespace thawslip::unicode {

/// Which paper a place prints on.
enum class Paper { A4, Letter };

/// The paper of a locale as a system names it, "de_DE.UTF-8": that of its territory (Unicode CLDR,
/// supplemental data, paperSize). Nothing where it names no territory ("C", "POSIX", "en").
std::optional<Paper> paper_of(const std::string& locale);

/// The language of a locale, in small letters: "de"; empty where it names none.
std::string language_of(const std::string& locale);

} // namespace thawslip::unicode
