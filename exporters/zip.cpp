#include "exporters/zip.hpp"

#include "exporters/bytes.hpp"

#include <limits>
#include <stdexcept>
#include <zlib.h>

namespace coilwright {
namespace {

constexpr std::uint32_t local_signature = 0x04034b50, central_signature = 0x02014b50,
                        end_signature = 0x06054b50;
constexpr std::uint16_t version_needed = 20, utf8_names = 0x0800, method_deflate = 8;
constexpr std::uint16_t first_date = 0x0021; // 1980-01-01
constexpr std::size_t most_bytes = std::numeric_limits<std::uint32_t>::max();

// Without the header and the checksum that zlib would put around it. At the fastest level: the
// files are long lists of numbers, and three times the work makes them a tenth smaller.
// Appends to the archive, and returns how many bytes.
std::size_t append_deflated(std::string& archive, const std::string& bytes) {
    z_stream stream{};
    if (deflateInit2(&stream, Z_BEST_SPEED, Z_DEFLATED, -MAX_WBITS, 8, Z_DEFAULT_STRATEGY) != Z_OK)
        throw std::runtime_error("zlib does not start");
    const std::size_t before = archive.size();
    archive.resize(before + deflateBound(&stream, bytes.size()));
    stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(bytes.data()));
    stream.avail_in = static_cast<uInt>(bytes.size());
    stream.next_out = reinterpret_cast<Bytef*>(archive.data() + before);
    stream.avail_out = static_cast<uInt>(archive.size() - before);
    const int result = deflate(&stream, Z_FINISH);
    archive.resize(before + stream.total_out);
    deflateEnd(&stream);
    if (result != Z_STREAM_END)
        throw std::runtime_error("zlib did not finish");
    return stream.total_out;
}

// The fields that the local header and the central directory share.
std::string common_fields(const OutputFile& file, std::uint32_t checksum, std::size_t packed_size) {
    std::string fields;
    append_u16(fields, version_needed);
    append_u16(fields, utf8_names);
    append_u16(fields, method_deflate);
    append_u16(fields, 0); // time
    append_u16(fields, first_date);
    append_u32(fields, checksum);
    append_u32(fields, static_cast<std::uint32_t>(packed_size));
    append_u32(fields, static_cast<std::uint32_t>(file.bytes.size()));
    append_u16(fields, static_cast<std::uint16_t>(file.path.size()));
    append_u16(fields, 0); // extra field
    return fields;
}

} // namespace

std::string zip_archive(const std::vector<OutputFile>& files) {
    if (files.size() > 0xffff)
        throw std::length_error("a ZIP archive holds at most 65,535 files");
    std::string archive, directory;
    for (const OutputFile& file : files) {
        if (file.bytes.size() > most_bytes / 2 || file.path.size() > 0xffff)
            throw std::length_error("a file is too long for a ZIP archive");
        const auto checksum =
            static_cast<std::uint32_t>(crc32(0, reinterpret_cast<const Bytef*>(file.bytes.data()),
                                             static_cast<uInt>(file.bytes.size())));
        const auto place = static_cast<std::uint32_t>(archive.size());
        append_u32(archive, local_signature);
        const std::size_t start = archive.size();
        archive += common_fields(file, checksum, 0) + file.path;
        const std::string fields =
            common_fields(file, checksum, append_deflated(archive, file.bytes));
        archive.replace(start, fields.size(), fields);
        append_u32(directory, central_signature);
        append_u16(directory, version_needed); // made by
        directory += fields;
        append_u16(directory, 0); // comment
        append_u16(directory, 0); // disk
        append_u16(directory, 0); // attributes inside
        append_u32(directory, 0); // attributes outside
        append_u32(directory, place);
        directory += file.path;
        if (archive.size() + directory.size() > most_bytes - 64)
            throw std::length_error("a ZIP archive holds at most 4 GiB");
    }
    const auto place = static_cast<std::uint32_t>(archive.size());
    archive += directory;
    append_u32(archive, end_signature);
    append_u16(archive, 0);
    append_u16(archive, 0);
    append_u16(archive, static_cast<std::uint16_t>(files.size()));
    append_u16(archive, static_cast<std::uint16_t>(files.size()));
    append_u32(archive, static_cast<std::uint32_t>(directory.size()));
    append_u32(archive, place);
    append_u16(archive, 0);
    return archive;
}

} // namespace coilwright
