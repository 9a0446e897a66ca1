// All rows of the table of numbers, a file a part of the car, in the order in which they are listed and
// compared. Read for the names alone by geometry/car/field.h and for everything by
// geometry/car/field_table.cpp, which say what BOLTHOLE_FIELD makes of a row; so it is not guarded.
// clang-format off
#include "geometry/car/field_rows_car.h"
#include "geometry/car/field_rows_weighing.h"
#include "geometry/car/field_rows_launch.h"
#include "geometry/car/field_rows_driveline.h"
#include "geometry/car/field_rows_links.h"
#include "geometry/car/field_rows_target.h"
#include "geometry/car/field_rows_parts.h"
// clang-format on
