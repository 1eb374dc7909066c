#pragma once

#include "thawslip/outcome.h"

#include <memory>
#include <string>

namespace thawslip {

/// The text of a description of a packing day, in TOML (README.md, "The day").
struct DayText {
    std::string name; ///< its file, for messages
    std::string text;
};

struct KitchenParts;

/// One kitchen: its settings, and what comes with Thawslip. Every other function begins with it.
///
///     auto kitchen = thawslip::open_kitchen(thawslip_data_folder, "paper = \"a4\"", "2026-10-17");
///     if (!kitchen) { … kitchen.messages … }
class Kitchen {
public:
    explicit Kitchen(std::unique_ptr<KitchenParts> parts);
    Kitchen(Kitchen&&) noexcept;
    Kitchen& operator=(Kitchen&&) noexcept;
    ~Kitchen();

    /// For the library itself.
    const KitchenParts& parts() const { return *parts_; }

private:
    std::unique_ptr<KitchenParts> parts_;
};

/// Reads the settings of a kitchen.
/// \param data_folder  has layouts/ and fonts/: `thawslip_DATA_DIR` of the CMake package, the
/// variable
///                     `datafolder` of thawslip.pc
/// \param settings     the text of a settings file (README.md, "Settings"); empty: the usual ones
/// \param today        ISO 8601, `2026-10-17`; empty: not known, and nothing is said of what is
/// past
Outcome<Kitchen> open_kitchen(const std::string& data_folder, const std::string& settings = {},
                              const std::string& today = {});

} // namespace thawslip
