// Pieces of work that share nothing, a few at a time.
#pragma once

#include <cstddef>
#include <functional>

namespace coilwright {

/// Calls work(0) to work(count - 1), `hands` of them at a time (0: as many as there are
/// processors), one of them in this thread, and returns when all are done. Which hand does which
/// piece is left open, so a piece must write to places of its own. Throws what the piece of the
/// lowest index threw, of those that were begun; none is begun after a throw.
void side_by_side(std::size_t count, const std::function<void(std::size_t)>& work,
                  unsigned hands = 0);

} // namespace coilwright
