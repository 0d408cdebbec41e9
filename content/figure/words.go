package figure

// The holds and faces of the chart, as this package must tell them apart. They are
// plain words here, because the drawings know nothing of the tables.
const (
	outsideClip = "outside-clip"
	insideClip  = "inside-clip"
	plate       = "plate"
	strap       = "strap"
	wing        = "wing"
	injected    = "injected"
	staked      = "staked"

	overCaps    = "over-caps"
	grooveInner = "groove-inner"
	grooveOuter = "groove-outer"
	underPlates = "under-plates"
	holeCentres = "hole-centres"
	wingOuter   = "wing-outer"
)

// facesInWords names the faces, as they stand under a drawing.
func facesInWords(faces string) string {
	switch faces {
	case overCaps:
		return "over the caps, cap end to cap end"
	case grooveInner:
		return "between the inner groove faces"
	case grooveOuter:
		return "between the outer groove faces"
	case underPlates:
		return "under the plates, plate to plate"
	case holeCentres:
		return "between the hole centres"
	case wingOuter:
		return "over the outer faces of the wings"
	}
	return "faces not known, drawn over caps"
}

// holdTitle names the picture of a hold.
func holdTitle(hold string) string {
	switch hold {
	case outsideClip:
		return "Outside clip"
	case insideClip:
		return "Inside clip"
	case plate:
		return "Bearing plate"
	case strap:
		return "Strap or U-bolt"
	case wing:
		return "Wing bearing"
	case injected:
		return "Injected plastic"
	case staked:
		return "Staked"
	}
	return "Not sure"
}

// holdSeen says what one can see of a hold.
func holdSeen(hold string) string {
	switch hold {
	case outsideClip:
		return "Plain caps; a ring sits in the yoke ear outside each cap."
	case insideClip:
		return "A groove round each cap near its open end, with a C-shaped clip inside the yoke ear."
	case plate:
		return "A bolted plate is part of each cap."
	case strap:
		return "Each cap sits in an open half bore, under a strap or U-bolt, located by tabs."
	case wing:
		return "Each cap has wings with bolt holes."
	case injected:
		return "No clip; plastic fills a ring groove in the cap, often with a small injection hole in the ear."
	case staked:
		return "No clip; metal of the yoke ear is peened over the edge of each cap."
	}
	return "How the caps are held is not known; they are drawn without a clip."
}
