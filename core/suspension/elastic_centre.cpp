// SPDX-License-Identifier: MIT
#include "core/suspension/elastic_centre.h"

#include "core/base/solve.h"

namespace stillbay {

ElasticCentre elasticCentre(const Matrix6d& K)
{
    const Matrix6d S = inverse(K);
    const Matrix3d S_ut = S.topRightCorner<3, 3>(), S_tt = S.bottomRightCorner<3, 3>();
    const Matrix3d C = S_ut * S_tt.inverse();
    const Matrix3d twice = C - C.transpose();
    return {.rollHeight = C(1, 0),
            .pitchHeight = -C(0, 1),
            .heaveAhead = C(2, 1),
            .heaveLeft = -C(2, 0),
            .p_BE = 0.5 * Vector3d(twice(2, 1), twice(0, 2), twice(1, 0))};
}

}  // namespace stillbay
