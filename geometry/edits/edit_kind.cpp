#include <utility>

#include "geometry/edits/edit.h"

namespace bolthole {

Edit::Edit() = default;
Edit::Edit(const Edit& other) = default;
Edit::Edit(Edit&& other) noexcept = default;
Edit& Edit::operator=(const Edit& other) = default;
Edit& Edit::operator=(Edit&& other) noexcept = default;
Edit::~Edit() = default;

template <class One>
requires(!std::is_same_v<One, Edit> && std::is_constructible_v<Edit::Kind, One>) Edit::Edit(One kind)
    : kind_(std::move(kind)) {}

template Edit::Edit(SetNumber kind);
template Edit::Edit(ClearNumber kind);
template Edit::Edit(MoveHole kind);
template Edit::Edit(UseHole kind);
template Edit::Edit(MoveJoint kind);
template Edit::Edit(SetUnits kind);
template Edit::Edit(SetTitle kind);
template Edit::Edit(SetNotes kind);
template Edit::Edit(SetAdjuster kind);
template Edit::Edit(SetDriveline kind);
template Edit::Edit(RenameLink kind);
template Edit::Edit(RenameHole kind);
template Edit::Edit(AddHole kind);
template Edit::Edit(RemoveHole kind);
template Edit::Edit(SetTarget kind);
template Edit::Edit(ChooseHoles kind);
template Edit::Edit(KeepSetup kind);
template Edit::Edit(DescribeKept kind);
template Edit::Edit(SetBaseline kind);
template Edit::Edit(RemoveKept kind);
template Edit::Edit(RestoreKept kind);
template Edit::Edit(SwapBaseline kind);
template Edit::Edit(ChangeRide kind);
template Edit::Edit(SetChoice kind);
template Edit::Edit(AddBallast kind);
template Edit::Edit(RemoveBallast kind);
template Edit::Edit(RenameBallast kind);
template Edit::Edit(AddSpring kind);
template Edit::Edit(RemoveSpring kind);
template Edit::Edit(ChangeSpring kind);
template Edit::Edit(AddLink kind);
template Edit::Edit(RemoveLink kind);
template Edit::Edit(ChangeLink kind);
template Edit::Edit(SplitLink kind);
template Edit::Edit(JoinLinks kind);
template Edit::Edit(SetPlate kind);
template Edit::Edit(SetPlanned kind);
template Edit::Edit(PlanHole kind);
template Edit::Edit(AddPass kind);
template Edit::Edit(ChangePass kind);
template Edit::Edit(RemovePass kind);
template Edit::Edit(StrikePass kind);
template Edit::Edit(SetNumbers kind);
template Edit::Edit(SetTorque kind);
template Edit::Edit(CorrectLaunch kind);
template Edit::Edit(SetDamping kind);

}  // namespace bolthole
