// ZIP archives in memory, for the formats that are one: the same bytes for the same content.
#pragma once

#include "exporters/files.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// An archive of the files in their order, deflated, without dates of their own (all are of
/// 1980-01-01, the first that the format can say). Names are UTF-8. Throws std::length_error past 4
/// GiB or 65,535 files. Source of the layout: the public application note on the format,
/// version 2.0.
std::string zip_archive(const std::vector<OutputFile>& files);

} // namespace coilwright
