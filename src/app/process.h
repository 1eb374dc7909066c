#pragma once

namespace thawslip::app {

/// Makes the process one that nothing can take by surprise. Called once, before anything is opened.
///
/// Where the caller closed standard input, output or error, /dev/null takes its number, opened for
/// reading: else the first file that is opened would become standard output, and be written into.
/// Writing to it still fails. A limit on file sizes becomes a failed write, where the signal of
/// POSIX (SIGXFSZ) would leave a half-written file behind.
/// \throws SystemFailure where the stack may not grow as far as any work needs: it would end the
/// program in the middle
void prepare_process();

} // namespace thawslip::app
