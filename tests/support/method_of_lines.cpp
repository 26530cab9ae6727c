// SPDX-License-Identifier: MIT
#include "support/method_of_lines.hpp"

#include "heat/water.hpp"
#include "units/quantity.hpp"

#include <cmath>
#include <cvode/cvode.h>
#include <memory>
#include <nvector/nvector_serial.h>
#include <stdexcept>
#include <string>
#include <sunlinsol/sunlinsol_band.h>
#include <sunlinsol/sunlinsol_spgmr.h>
#include <sunmatrix/sunmatrix_band.h>
#include <type_traits>
#include <utility>

namespace holdwater::support {
namespace {

void check(int flag, const char* what) {
    if (flag < 0) {
        throw std::runtime_error(std::string(what) + " failed with " + std::to_string(flag));
    }
}

/// The diffusion operator of one direction in control volumes around nodes, which stand closer near the face.
struct Line {
    std::vector<double> lower, upper;  // 1/s per K of difference to the neighbour
    std::vector<double> share;         // of the volume; sums to 1
    double film = 0.0;                 // 1/s per K between bath and face node
};

Line line_of(const Axis& axis, const LinesCase& input) {
    const auto n = static_cast<std::size_t>(axis.nodes);
    std::vector<double> place(n);
    for (std::size_t i = 0; i < n; ++i) {
        const double u = static_cast<double>(i) / static_cast<double>(n - 1);
        place[i] = axis.half * (1.0 - std::pow(1.0 - u, 1.5));
    }
    const auto area = [&](double r) { return axis.b == 0 ? 1.0 : r; };
    const auto volume = [&](double r) { return axis.b == 0 ? r : 0.5 * r * r; };
    Line line{std::vector<double>(n, 0.0), std::vector<double>(n, 0.0), std::vector<double>(n, 0.0), 0.0};
    double inner = 0.0;
    for (std::size_t i = 0; i < n; ++i) {
        const double outer = i + 1 < n ? 0.5 * (place[i] + place[i + 1]) : axis.half;
        const double size = volume(outer) - volume(inner);
        line.share[i] = size / volume(axis.half);
        if (i > 0) {
            line.lower[i] = input.diffusivity * area(inner) / (place[i] - place[i - 1]) / size;
        }
        if (i + 1 < n) {
            line.upper[i] = input.diffusivity * area(outer) / (place[i + 1] - place[i]) / size;
        } else {
            line.film = input.film * input.diffusivity / input.conductivity * area(axis.half) / size;
        }
        inner = outer;
    }
    return line;
}

/// Unknowns: node temperatures (first axis fastest), bath, mean warmth given through the surface [K].
struct System {
    const LinesCase& input;
    std::vector<Line> lines;
    std::size_t nodes = 1;
    double bath_capacity = 0.0;
    std::vector<double> weights;  // of each node in the mean

    // I - gamma times the operator of one direction, eliminated (Thomas): the preconditioner is the product of all.
    struct Eliminated {
        std::vector<double> pivot, above;
    };
    std::vector<Eliminated> eliminated;
    double gamma = 0.0;  // of the elimination

    explicit System(const LinesCase& c) : input(c) {
        for (const Axis& axis : c.axes) {
            lines.push_back(line_of(axis, c));
            nodes *= static_cast<std::size_t>(axis.nodes);
        }
        for (std::size_t i = 0; i < nodes; ++i) {
            weights.push_back(weight(i));
        }
    }

    void eliminate(double new_gamma) {
        gamma = new_gamma;
        eliminated.clear();
        for (const Line& line : lines) {
            const std::size_t n = line.share.size();
            Eliminated e{std::vector<double>(n), std::vector<double>(n)};
            for (std::size_t j = 0; j < n; ++j) {
                const double film = j + 1 == n ? line.film : 0.0;
                const double diagonal = 1.0 + gamma * (line.lower[j] + line.upper[j] + film);
                e.pivot[j] = diagonal - (j > 0 ? gamma * line.lower[j] * e.above[j - 1] : 0.0);
                e.above[j] = gamma * line.upper[j] / e.pivot[j];
            }
            eliminated.push_back(std::move(e));
        }
    }

    void precondition(double* z) const {
        std::size_t stride = 1;
        for (std::size_t a = 0; a < lines.size(); ++a) {
            const Line& line = lines[a];
            const Eliminated& e = eliminated[a];
            const std::size_t count = line.share.size();
            const std::size_t block = stride * count;
            for (std::size_t start = 0; start < nodes; start += block) {
                for (std::size_t j = 0; j < count; ++j) {
                    for (std::size_t i = start + j * stride; i < start + (j + 1) * stride; ++i) {
                        z[i] = (z[i] + (j > 0 ? gamma * line.lower[j] * z[i - stride] : 0.0)) / e.pivot[j];
                    }
                }
                for (std::size_t j = count - 1; j-- > 0;) {
                    for (std::size_t i = start + j * stride; i < start + (j + 1) * stride; ++i) {
                        z[i] += e.above[j] * z[i + stride];
                    }
                }
            }
            stride = block;
        }
    }

    void rates(double t, const double* y, double* dy) const {
        const double bath = y[nodes];
        for (std::size_t i = 0; i < nodes; ++i) {
            dy[i] = 0.0;
        }
        double uptake = 0.0;  // K/s of the mean
        std::size_t stride = 1;
        for (std::size_t a = 0; a < lines.size(); ++a) {
            const Line& line = lines[a];
            const std::size_t count = line.share.size();
            const std::size_t block = stride * count;
            for (std::size_t start = 0; start < nodes; start += block) {
                for (std::size_t j = 0; j < count; ++j) {
                    const std::size_t row = start + j * stride;
                    for (std::size_t i = row; i < row + stride; ++i) {
                        double rate = 0.0;
                        if (j > 0) {
                            rate += line.lower[j] * (y[i - stride] - y[i]);
                        }
                        if (j + 1 < count) {
                            rate += line.upper[j] * (y[i + stride] - y[i]);
                        } else {
                            const double film = line.film * (bath - y[i]);
                            rate += film;
                            uptake += weights[i] * film;
                        }
                        dy[i] += rate;
                    }
                }
            }
            stride = block;
        }
        const double outside = input.outside_start + input.outside_slope * t;
        dy[nodes] = -(input.loss * (bath - outside) + input.food_capacity * uptake) / bath_capacity;
        dy[nodes + 1] = uptake;
    }

    double weight(std::size_t index) const {
        double product = 1.0;
        for (const Line& line : lines) {
            product *= line.share[index % line.share.size()];
            index /= line.share.size();
        }
        return product;
    }
};

int right_hand_side(realtype t, N_Vector y, N_Vector dy, void* data) {
    static_cast<const System*>(data)->rates(t, N_VGetArrayPointer(y), N_VGetArrayPointer(dy));
    return 0;
}

int set_up(realtype, N_Vector, N_Vector, booleantype, booleantype* again, realtype gamma, void* data) {
    static_cast<System*>(data)->eliminate(gamma);
    *again = SUNTRUE;
    return 0;
}

int solve(realtype, N_Vector, N_Vector, N_Vector r, N_Vector z, realtype, realtype, int, void* data) {
    N_VScale(1.0, r, z);
    static_cast<const System*>(data)->precondition(N_VGetArrayPointer(z));
    return 0;
}

template <class T, auto Free>
using Handle = std::unique_ptr<T, decltype([](T* p) { Free(p); })>;

void free_cvode(void* memory) {
    CVodeFree(&memory);
}
void free_context(SUNContext context) {
    SUNContext_Free(&context);
}

}  // namespace

std::vector<LinesState> run_lines(const LinesCase& input, const std::vector<double>& moments) {
    SUNContext raw_context = nullptr;
    check(SUNContext_Create(nullptr, &raw_context), "SUNContext_Create");
    const Handle<std::remove_pointer_t<SUNContext>, free_context> context(raw_context);

    System system(input);
    const auto size = static_cast<sunindextype>(system.nodes + 2);
    const Handle<std::remove_pointer_t<N_Vector>, N_VDestroy> y(N_VNew_Serial(size, context.get()));
    double* values = N_VGetArrayPointer(y.get());
    for (std::size_t i = 0; i < system.nodes; ++i) {
        values[i] = input.food_start;
    }
    values[system.nodes] = input.bath_start;
    values[system.nodes + 1] = 0.0;

    const double cp = heat::water_specific_heat().si();
    const auto density = [](double celsius) { return heat::water_density(units::celsius(celsius)).si(); };
    double mass = input.water * density(input.bath_start);
    system.bath_capacity = mass * cp + input.liner;

    const Handle<void, free_cvode> cvode(CVodeCreate(CV_BDF, context.get()));
    check(CVodeInit(cvode.get(), right_hand_side, 0.0, y.get()), "CVodeInit");
    check(CVodeSetUserData(cvode.get(), &system), "CVodeSetUserData");
    check(CVodeSStolerances(cvode.get(), input.relative_tolerance, input.absolute_tolerance), "CVodeSStolerances");
    check(CVodeSetMaxNumSteps(cvode.get(), 200000), "CVodeSetMaxNumSteps");
    // One direction: bands, the bath beside the face node. More: Krylov, since the bath sees every face node.
    const bool banded = input.axes.size() == 1;
    const Handle<std::remove_pointer_t<SUNMatrix>, SUNMatDestroy> matrix(
        banded ? SUNBandMatrix(size, 1, 2, context.get()) : nullptr);
    const Handle<std::remove_pointer_t<SUNLinearSolver>, SUNLinSolFree> solver(
        banded ? SUNLinSol_Band(y.get(), matrix.get(), context.get())
               : SUNLinSol_SPGMR(y.get(), input.preconditioned ? SUN_PREC_LEFT : SUN_PREC_NONE, 20, context.get()));
    check(CVodeSetLinearSolver(cvode.get(), solver.get(), matrix.get()), "CVodeSetLinearSolver");
    if (!banded) {
        // Tighter than CVODE's own 0.05: the few face nodes hardly count in its norm, and a loose solve costs steps.
        check(CVodeSetEpsLin(cvode.get(), 0.005), "CVodeSetEpsLin");
    }
    if (!banded && input.preconditioned) {
        check(CVodeSetPreconditioner(cvode.get(), set_up, solve), "CVodeSetPreconditioner");
    }

    std::vector<LinesState> states;
    double now = 0.0;
    std::size_t next_pour = 0;
    const auto run_to = [&](double moment) {
        if (moment > now) {
            check(CVodeSetStopTime(cvode.get(), moment), "CVodeSetStopTime");
            check(CVode(cvode.get(), moment, y.get(), &now, CV_NORMAL), "CVode");
        }
    };
    for (const double moment : moments) {
        for (; next_pour < input.pours.size() && input.pours[next_pour].at <= moment; ++next_pour) {
            const LinesPour& pour = input.pours[next_pour];
            run_to(pour.at);
            double& bath = values[system.nodes];
            mass -= pour.removed * density(bath);
            const double added = pour.added * density(pour.poured);
            const double rest = mass * cp + input.liner;
            bath = (rest * bath + added * cp * pour.poured) / (rest + added * cp);
            mass += added;
            system.bath_capacity = mass * cp + input.liner;
            check(CVodeReInit(cvode.get(), now, y.get()), "CVodeReInit");
        }
        run_to(moment);
        states.push_back({values[system.nodes], values[0], input.food_capacity * values[system.nodes + 1]});
    }
    return states;
}

}  // namespace holdwater::support
