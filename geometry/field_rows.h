// All rows of the table of numbers, a file a part of the car, in the order in which they are listed and
// compared. Read for the names alone by geometry/field.h and for everything by geometry/field_table.cpp,
// which say what BOLTHOLE_FIELD makes of a row; so it is not guarded.
// clang-format off
#include "geometry/field_rows_car.h"
#include "geometry/field_rows_weighing.h"
#include "geometry/field_rows_launch.h"
#include "geometry/field_rows_driveline.h"
#include "geometry/field_rows_links.h"
#include "geometry/field_rows_wanted.h"
#include "geometry/field_rows_parts.h"
// clang-format on
