// Signals that end a program, held back while a set of files is half written.
#pragma once

#include <csignal>

namespace coilwright {

/// Holds SIGINT, SIGTERM and SIGHUP back from this thread for as long as it lives; then they act.
/// Those that the program ignores (`nohup`, background jobs) are left alone: they must not stop
/// anything. Other threads, if there are any, do not hold them.
class HeldSignals {
public:
    HeldSignals();
    ~HeldSignals();
    HeldSignals(const HeldSignals&) = delete;
    HeldSignals& operator=(const HeldSignals&) = delete;

    /// Whether one of them has come.
    bool pending() const;

private:
    sigset_t held_;
    sigset_t before_;
};

} // namespace coilwright
