#include "exporters/held_signals.hpp"

namespace coilwright {
namespace {

constexpr int ending_signals[] = {SIGINT, SIGTERM, SIGHUP};

bool is_ignored(int signal) {
    struct sigaction action {};
    return sigaction(signal, nullptr, &action) == 0 && action.sa_handler == SIG_IGN;
}

} // namespace

HeldSignals::HeldSignals() {
    sigemptyset(&held_);
    for (const int signal : ending_signals)
        if (!is_ignored(signal))
            sigaddset(&held_, signal);
    pthread_sigmask(SIG_BLOCK, &held_, &before_);
}

HeldSignals::~HeldSignals() {
    pthread_sigmask(SIG_SETMASK, &before_, nullptr);
}

bool HeldSignals::pending() const {
    sigset_t waiting;
    sigpending(&waiting);
    for (const int signal : ending_signals)
        if (sigismember(&held_, signal) == 1 && sigismember(&waiting, signal) == 1)
            return true;
    return false;
}

} // namespace coilwright
