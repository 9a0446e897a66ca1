// What was found for a target, in a person's words: rows to be shown, each with what taking it does.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "geometry/edits/edit.h"
#include "geometry/search/target_search.h"
#include "geometry/units/text.h"

namespace bolthole {

/// One answer.
struct AnswerRow {
    QString what;                ///< "Bolt lower axle to 'top'; upper 1.5 turns shorter"
    QString figures;             ///< "IC 48.2 in ahead, 9.6 in up · anti-squat 104 % · pinion +0.3°"
    QString chance;              ///< "9 in 10 (93 %)"; empty where it does not meet the target
    QString remark;              ///< what misses, what binds, what is wrong with it
    bool isMiss = false;         ///< the remark says that it does not meet the target
    bool isProblem = false;      ///< the remark says that something is wrong with it
    std::optional<Edit> edit{};  ///< what taking it does; nothing where nothing would change
    QString action{};            ///< on the button that does it
};

[[nodiscard]] std::vector<AnswerRow> combinationRows(const std::vector<TargetAnswer>& answers, const Car& car,
                                                     LengthTreatment lengths);
[[nodiscard]] std::vector<AnswerRow> holeRows(const std::vector<NewHole>& holes, const Car& car,
                                              NumberStyle style);
[[nodiscard]] std::vector<AnswerRow> lengthRows(const std::vector<NewLength>& lengths, const Car& car,
                                                NumberStyle style);

/// "9 in 10 (93 %)", "more than 99 in 100", "less than 1 in 100"; an em dash for NaN.
[[nodiscard]] QString chanceWords(double chance);
/// Where a hole goes against one of its bracket: "1 3/8 in above and 1/4 in ahead of 'bottom'"; to a 32nd of
/// an inch or half a millimeter.
[[nodiscard]] QString offsetWords(const Eigen::Vector3d& from, const Eigen::Vector3d& to, const QString& name,
                                  Units units);
/// In one line what does best: for beside the mark in the side view.
[[nodiscard]] QString bestInWords(const TargetAnswers& answers, const Car& car, NumberStyle style);

}  // namespace bolthole
