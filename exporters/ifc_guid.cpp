#include "exporters/ifc_guid.hpp"

#include <algorithm>
#include <bit>

namespace coilwright {
namespace {

using Uuid = std::array<std::uint8_t, 16>;

constexpr Uuid url_names{0x6b, 0xa7, 0xb8, 0x11, 0x9d, 0xad, 0x11, 0xd1,
                         0x80, 0xb4, 0x00, 0xc0, 0x4f, 0xd4, 0x30, 0xc8};

void mix_block(const std::uint8_t* block, std::array<std::uint32_t, 5>& state) {
    std::array<std::uint32_t, 80> w{};
    for (std::size_t t = 0; t < 16; ++t)
        for (std::size_t k = 0; k < 4; ++k)
            w[t] = w[t] << 8 | block[4 * t + k];
    for (std::size_t t = 16; t < 80; ++t)
        w[t] = std::rotl(w[t - 3] ^ w[t - 8] ^ w[t - 14] ^ w[t - 16], 1);
    auto [a, b, c, d, e] = state;
    for (std::size_t t = 0; t < 80; ++t) {
        const std::uint32_t mixed = t < 20   ? ((b & c) | (~b & d)) + 0x5a827999
                                    : t < 40 ? (b ^ c ^ d) + 0x6ed9eba1
                                    : t < 60 ? ((b & c) | (b & d) | (c & d)) + 0x8f1bbcdc
                                             : (b ^ c ^ d) + 0xca62c1d6;
        const std::uint32_t next = std::rotl(a, 5) + mixed + e + w[t];
        e = d;
        d = c;
        c = std::rotl(b, 30);
        b = a;
        a = next;
    }
    const std::array<std::uint32_t, 5> sum{a, b, c, d, e};
    for (std::size_t k = 0; k < 5; ++k)
        state[k] += sum[k];
}

Uuid uuid5(const Uuid& names, const std::string& name) {
    const Digest digest = sha1(std::string(names.begin(), names.end()) + name);
    Uuid uuid{};
    std::copy_n(digest.begin(), uuid.size(), uuid.begin());
    uuid[6] = static_cast<std::uint8_t>((uuid[6] & 0x0f) | 0x50);
    uuid[8] = static_cast<std::uint8_t>((uuid[8] & 0x3f) | 0x80);
    return uuid;
}

} // namespace

Digest sha1(const std::string& bytes) {
    std::string padded = bytes + '\x80';
    padded.resize((padded.size() + 8 + 63) / 64 * 64 - 8, '\0');
    const std::uint64_t bits = 8 * static_cast<std::uint64_t>(bytes.size());
    for (int shift = 56; shift >= 0; shift -= 8)
        padded += static_cast<char>(bits >> shift & 0xff);
    std::array<std::uint32_t, 5> state{0x67452301, 0xefcdab89, 0x98badcfe, 0x10325476, 0xc3d2e1f0};
    for (std::size_t at = 0; at < padded.size(); at += 64)
        mix_block(reinterpret_cast<const std::uint8_t*>(padded.data()) + at, state);
    Digest digest{};
    for (std::size_t k = 0; k < digest.size(); ++k)
        digest[k] = static_cast<std::uint8_t>(state[k / 4] >> (24 - 8 * (k % 4)) & 0xff);
    return digest;
}

std::string ifc_guid(const std::string& design_name, const std::string& part) {
    const Uuid uuid = uuid5(uuid5(url_names, design_name), part);
    const char* const letters = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz_$";
    // 128 bits in 22 groups of six, the first with four zeros before it.
    std::string guid;
    unsigned bits = 0;
    int waiting = 4; // bits that are in `bits` and not in `guid`
    for (const std::uint8_t byte : uuid) {
        bits = (bits << 8 | byte) & 0xffff;
        waiting += 8;
        while (waiting >= 6) {
            waiting -= 6;
            guid += letters[bits >> waiting & 0x3f];
        }
    }
    return guid;
}

} // namespace coilwright
