package report

// Promise says of every figure what it is worth, with what comes before it.
const Promise = "Every figure is an estimate and nothing here certifies a boat. Local law and licensed advice come first. Wear a life jacket and try the boat in shallow water with flotation."
