package units

import "reflect"

// valueOf takes a Value apart: its SI number and its dimension. The dimension is
// nil where q is no quantity.
//
// It asks for each type by name and calls no method, because a method called
// through an interface makes the compiler put the value on the heap: this way
// US.Append(b, trim) allocates nothing.
func valueOf(q Value) (float64, *dimension) {
	switch v := q.(type) {
	case nil:
		return 0, nil
	case Length:
		return float64(v), &lengthDimension
	case Area:
		return float64(v), &areaDimension
	case Mass:
		return float64(v), &massDimension
	case Force:
		return float64(v), &forceDimension
	case Acceleration:
		return float64(v), &accelerationDimension
	case Moment:
		return float64(v), &momentDimension
	case Stress:
		return float64(v), &stressDimension
	case LineMass:
		return float64(v), &lineMassDimension
	case LineLoad:
		return float64(v), &lineLoadDimension
	case AreaMass:
		return float64(v), &areaMassDimension
	case Density:
		return float64(v), &densityDimension
	case SecondMoment:
		return float64(v), &secondMomentDimension
	case SectionModulus:
		return float64(v), &sectionModulusDimension
	case TimeSpan:
		return float64(v), &timeDimension
	case Speed:
		return float64(v), &speedDimension
	case Angle:
		return float64(v), &angleDimension
	case Energy:
		return float64(v), &energyDimension
	case Power:
		return float64(v), &powerDimension
	case Stiffness:
		return float64(v), &stiffnessDimension
	case Inertia:
		return float64(v), &inertiaDimension
	}
	// Go gives a pointer the methods of what it points to, so a *Length is a Value
	// too: it counts as the length, or as nothing where it is nil and has no Elem.
	p := reflect.ValueOf(q)
	if p.Kind() != reflect.Pointer || p.Elem().Kind() != reflect.Float64 {
		return 0, nil
	}
	zero, ok := reflect.Zero(p.Elem().Type()).Interface().(Value)
	if !ok {
		return 0, nil
	}
	return p.Elem().Float(), zero.dimension()
}
