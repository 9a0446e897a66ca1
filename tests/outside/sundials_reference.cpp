// SUNDIALS 6 (A. C. Hindmarsh et al., "SUNDIALS: Suite of Nonlinear and Differential/Algebraic Equation
// Solvers", ACM TOMS 31, 2005; title from memory), of Debian's libsundials-dev.
#include "tests/outside/sundials_reference.h"

#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sundials/sundials_context.h>
#include <sunnonlinsol/sunnonlinsol_fixedpoint.h>

namespace bolthole {

namespace {

int callSystem(realtype time, N_Vector state, N_Vector rates, void* system) {
    (*static_cast<const ReferenceSystem*>(system))(time, N_VGetArrayPointer(state),
                                                   N_VGetArrayPointer(rates));
    return 0;
}

/// Owns what CVODE needs.
class Reference {
  public:
    Reference(const ReferenceSystem& system, const std::vector<double>& start,
              const std::vector<double>& scale, double tolerance)
        : system_(system) {
        SUNContext_Create(nullptr, &context_);
        const auto size = static_cast<sunindextype>(start.size());
        state_ = N_VNew_Serial(size, context_);
        tolerances_ = N_VNew_Serial(size, context_);
        for (std::size_t index = 0; index < start.size(); ++index) {
            N_VGetArrayPointer(state_)[index] = start[index];
            N_VGetArrayPointer(tolerances_)[index] = tolerance * scale[index];
        }
        solver_ = SUNNonlinSol_FixedPoint(state_, 0, context_);
        memory_ = CVodeCreate(CV_ADAMS, context_);
        CVodeInit(memory_, callSystem, 0, state_);
        CVodeSVtolerances(memory_, tolerance, tolerances_);
        CVodeSetUserData(memory_, &system_);
        CVodeSetNonlinearSolver(memory_, solver_);
        CVodeSetMaxNumSteps(memory_, 10'000'000);
        CVodeSetMaxStep(memory_, 2e-3);
        CVodeSetErrFile(memory_, nullptr);
    }
    Reference(const Reference&) = delete;
    Reference& operator=(const Reference&) = delete;
    ~Reference() {
        CVodeFree(&memory_);
        SUNNonlinSolFree(solver_);
        N_VDestroy(state_);
        N_VDestroy(tolerances_);
        SUNContext_Free(&context_);
    }

    [[nodiscard]] bool moveTo(double time) {
        realtype reached = 0;
        return CVode(memory_, time, state_, &reached, CV_NORMAL) >= 0;
    }
    [[nodiscard]] std::vector<double> state() const {
        const double* at = N_VGetArrayPointer(state_);
        return {at, at + N_VGetLength(state_)};
    }

  private:
    ReferenceSystem system_;
    SUNContext context_ = nullptr;
    N_Vector state_ = nullptr;
    N_Vector tolerances_ = nullptr;
    SUNNonlinearSolver solver_ = nullptr;
    void* memory_ = nullptr;
};

}  // namespace

std::vector<std::vector<double>> integrateByReference(const ReferenceSystem& system,
                                                      const std::vector<double>& start,
                                                      const std::vector<double>& scale,
                                                      const std::vector<double>& times, double tolerance) {
    Reference reference(system, start, scale, tolerance);
    std::vector<std::vector<double>> states;
    for (const double time : times) {
        if (time > 0 && !reference.moveTo(time)) {
            return {};
        }
        states.push_back(reference.state());
    }
    return states;
}

}  // namespace bolthole
