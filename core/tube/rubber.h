// SPDX-License-Identifier: MIT
#pragma once

namespace stillbay {

/// Young's modulus of rubber from its Shore A hardness.
///
/// @param shoreA durometer reading, 0 < S < 100; meant for 20 … 80.
/// @return E [Pa], unstretched, static; uncertain by a factor of 1.5 either way: published
/// relations
///         differ 1.6-fold at 60 Shore A.
/// @source A. N. Gent, "On the relation between indentation hardness and Young's modulus",
///         Rubber Chem. Technol. 31 (1958) 896–906.
double youngsModulusFromShoreA(double shoreA);

/// Shear modulus of an incompressible rubber, G = E/3. @param youngsModulus [Pa]. @return [Pa].
double shearModulus(double youngsModulus);

/// Round hollow section, unstretched.
struct TubeSection {
    double outerDiameter = 0.0;  ///< [m]
    double bore = 0.0;           ///< [m], 0 ≤ bore < outerDiameter

    double area() const;          ///< [m²]
    double secondMoment() const;  ///< [m⁴] about a diameter
    double polarMoment() const;   ///< [m⁴]
    /// Timoshenko shear coefficient at ν = ½.
    /// @source G. R. Cowper, J. Appl. Mech. 33 (1966) 335–340, thick hollow circle.
    double shearCoefficient() const;
};

}  // namespace stillbay
