#include "exporters/files.hpp"
