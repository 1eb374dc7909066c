#pragma once

#include "archive/archive.h"
#include "base/result.h"
#include "desk/changes.h"
#include "service/freezer/freezer_state.h"
#include "service/messages.h"
#include "service/now.h"
#include "service/print/job.h"
#include "service/print/look.h"
#include "service/print/surroundings.h"
#include "service/reprint/reprint.h"
#include "service/reprint/wanted_prints.h"
#include "service/settings.h"

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace thawslip::desk {

class Phones;

/// The files of one folder, by their names in it. No name comes from a browser: it names files by
/// their places in `names`.
struct Folder {
    std::string shown; ///< as the cook knows it
    /// Descriptions of days, in the order of the alphabet.
    std::function<std::vector<std::string>()> names;
    std::function<std::string(const std::string& name)> place; ///< its whole path
    /// \returns its text; nothing where it is gone
    std::function<std::optional<std::string>(const std::string& name)> read;
    /// Puts a text in a file's place, whole or not at all, unless the file has another text by now
    /// than `before` (nothing: it must not be there yet). \returns whether it did
    std::function<bool(const std::string& name, const std::optional<std::string>& before,
                       const std::string& text)>
        write;
    /// Takes a file away, unless it has another text by now than `before`. \returns whether it did
    std::function<bool(const std::string& name, const std::string& before)> remove;
};

/// Texts that nobody has saved yet, kept outside of the folder; by the names of their files.
struct Drafts {
    std::function<std::optional<std::string>(const std::string& name)> read;
    /// \param text empty: there is none any longer
    std::function<void(const std::string& name, const std::string& text)> write;
};

/// The file of settings, which is there or is begun by the page.
struct SettingsFile {
    std::string place; ///< as the cook knows it
    /// \returns its text; nothing where there is none yet
    std::function<std::optional<std::string>()> read;
    /// As Folder's.
    std::function<bool(const std::optional<std::string>& before, const std::string& text)> write;
};

/// Where a print goes.
struct Destination {
    /// Empty: the usual one of such prints; nothing: a PDF.
    std::optional<std::string> printer;
};

/// A print of a day's file.
struct PrintWish {
    std::string day; ///< its name in the folder
    service::What what = service::What::Labels;
    service::Look look;
    archive::WhichBatch which = {};
    Destination to;
};

/// A print of the archive again.
struct ReprintWish {
    service::ReprintQuestion question;
    service::ReprintLook look;
    Destination to;
};

/// What came of a print.
struct Delivered {
    bool done = false;
    std::string said; ///< what the command would say: messages, then the closing line
    std::string pdf;  ///< its bytes, where it was not to be printed
};

/// What the desk asks of the computer that it runs on. Handed in by whoever starts it; all may be
/// called from several threads, one at a time.
/// \throws SystemFailure from any of them, where the system fails
struct Machine {
    std::function<service::Now()> now;
    /// The kitchen's clock between two moments, for plans.
    std::function<kitchen::LocalClock(kitchen::Instant from, kitchen::Instant to)> clock;
    std::function<service::Moment()> moment; ///< for what is noted of bags
    std::function<service::Outcome<service::Settings>()> settings;
    SettingsFile settings_file;
    /// Stocks, layouts, faces, and ids by a look into the archive that changes nothing.
    std::function<service::Surroundings(const service::Settings&)> surroundings;
    /// Nothing: nothing has been printed yet.
    std::function<std::optional<archive::Archive>(const service::Settings&, archive::Mode)> archive;
    Folder days;
    Drafts drafts;
    /// The names of printers, the usual one first; why there are none in `why`.
    std::function<std::vector<std::string>(std::string& why)> printers;
    std::function<Delivered(const PrintWish&)> print;
    std::function<Delivered(const ReprintWish&)> reprint;
    /// The door list of all that is frozen. \param look its part is not used
    std::function<Delivered(const service::Look& look, const Destination& to)> print_door_list;
    /// The texts of codes in a photograph (PNG, JPEG), read where it can do no harm.
    std::function<service::Outcome<std::vector<std::string>>(const std::string& picture)>
        photo_texts;
    /// Copies the archive, or writes it as a folder of text, beside the days. What was done is
    /// said.
    std::function<Delivered()> back_up;
    std::function<Delivered()> export_archive;
    /// What others and the desk itself do to the archive, as whoever watches it says (app);
    /// nothing: nobody watches.
    std::shared_ptr<Changes> changes;
    /// The phones of the house (desk/phones/phones.h); nothing where none are let in.
    std::shared_ptr<Phones> phones;
};

} // namespace thawslip::desk
