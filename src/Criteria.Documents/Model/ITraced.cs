namespace Criteria.Documents.Model;

/// <summary>Something a sentence may rest on.</summary>
internal interface ITraced
{
    /// <summary>Whether a sentence may rest on it: a fact that is known, a finding that is settled.</summary>
    public bool Stands { get; }

    /// <summary>Whether it is there and still undecided.</summary>
    public bool IsOpen { get; }

    /// <summary>Whether it is so: a finding that is met, a yes.</summary>
    public bool IsMet { get; }

    /// <summary>Its name with the night it is about, the same for the same thing.</summary>
    public string Key { get; }
}
