package purchase

// Drag is a sheave's drag coefficient.
type Drag float64
