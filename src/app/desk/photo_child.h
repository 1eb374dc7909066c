#pragma once

#include "app/exit_status.h"
#include "service/messages.h"

#include <cstddef>
#include <semaphore>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::app {

/// The word that starts the program as a reader of one picture: no command, and nothing to be
/// typed.
inline constexpr std::string_view photo_child_word = "--read-a-picture-for-the-desk";

/// Reads photographs by processes of their own: pictures come from anywhere, and what is wrong with
/// one ends its process alone. Each gets 512 MiB of addresses and 20 s of the processor's time, a
/// hundred times what a photograph of a label takes. Two are read at a time; others wait. May be
/// asked from several threads at once.
class PhotoReaders {
public:
    /// The texts of the codes in a photograph.
    /// \throws SystemFailure where no process can be started
    service::Outcome<std::vector<std::string>> texts_in(const std::string& picture);

private:
    static constexpr std::ptrdiff_t most = 2;
    std::counting_semaphore<most> places_{most};
};

/// What such a process does: takes the picture from standard input, and writes to standard output
/// what PhotoReaders reads there.
ExitStatus read_picture_for_desk();

} // namespace thawslip::app
