#include "geometry/design/read_design.hpp"
